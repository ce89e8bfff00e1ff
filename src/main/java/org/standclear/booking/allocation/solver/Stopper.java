package org.standclear.booking.allocation.solver;

import com.google.ortools.sat.CpSolver;
import java.time.Duration;
import org.standclear.core.allocation.Allocator.Watcher;

/** Asks the watcher from time to time whether to stop, beside the search. */
final class Stopper implements AutoCloseable {

    private static final Duration LOOK = Duration.ofMillis(50);

    private final Thread thread;
    private volatile boolean through;

    Stopper(CpSolver solver, Watcher watcher) {
        thread = new Thread(() -> look(solver, watcher), "allocation-stop");
        thread.setDaemon(true);
        thread.start();
    }

    private void look(CpSolver solver, Watcher watcher) {
        while (!through) {
            if (watcher.stopped()) {
                solver.stopSearch();
            }
            try {
                Thread.sleep(LOOK.toMillis());
            } catch (InterruptedException closed) {
                return;
            }
        }
    }

    @Override
    public void close() {
        through = true;
        thread.interrupt();
        try {
            // stopSearch must not reach a solver that is being thrown away
            thread.join();
        } catch (InterruptedException interrupted) {
            Thread.currentThread().interrupt();
        }
    }
}
