package org.standclear.platform.lab;

import java.util.Optional;
import java.util.function.Supplier;
import org.jspecify.annotations.Nullable;
import org.standclear.platform.ids.LabId;

/**
 * Which lab the work of the present thread is for: entered by the guard of a request, by the rounds over all labs, and by
 * whoever starts a thread of their own.
 */
public final class LabScope implements AutoCloseable {

    private static final ThreadLocal<@Nullable LabId> HERE = new ThreadLocal<>();

    private final @Nullable LabId before;

    private LabScope(@Nullable LabId before) {
        this.before = before;
    }

    /** From here until the scope is closed the work is for that lab. */
    public static LabScope enter(LabId lab) {
        LabScope entered = new LabScope(HERE.get());
        HERE.set(lab);
        return entered;
    }

    /** The lab that the work is for; empty outside of any scope. */
    public static Optional<LabId> here() {
        return Optional.ofNullable(HERE.get());
    }

    /** Does something for a lab. */
    public static <T> T in(LabId lab, Supplier<T> work) {
        LabScope entered = enter(lab);
        try {
            return work.get();
        } finally {
            entered.close();
        }
    }

    /** Does something for a lab. */
    public static void run(LabId lab, Runnable work) {
        LabScope entered = enter(lab);
        try {
            work.run();
        } finally {
            entered.close();
        }
    }

    /** The same work for another thread, where it is for the lab that the present work is for. */
    public static Runnable carry(Runnable work) {
        LabId here = HERE.get();
        return here == null ? work : () -> run(here, work);
    }

    @Override
    public void close() {
        if (before == null) {
            HERE.remove();
        } else {
            HERE.set(before);
        }
    }
}
