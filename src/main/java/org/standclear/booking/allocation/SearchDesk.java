package org.standclear.booking.allocation;

import java.time.Duration;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.UUID;
import java.util.concurrent.ExecutorService;
import java.util.concurrent.Executors;
import java.util.concurrent.Future;
import java.util.concurrent.ScheduledExecutorService;
import java.util.concurrent.TimeUnit;
import java.util.concurrent.atomic.AtomicReference;
import org.jspecify.annotations.Nullable;
import org.slf4j.Logger;
import org.slf4j.LoggerFactory;
import org.springframework.beans.factory.DisposableBean;
import org.springframework.stereotype.Service;
import org.springframework.transaction.PlatformTransactionManager;
import org.springframework.transaction.support.TransactionSynchronization;
import org.springframework.transaction.support.TransactionSynchronizationManager;
import org.springframework.transaction.support.TransactionTemplate;
import org.standclear.booking.allocation.Search.State;
import org.standclear.booking.allocation.Search.Value;
import org.standclear.core.allocation.Allocator;
import org.standclear.core.allocation.Allocator.Effort;
import org.standclear.core.allocation.Allocator.Progress;
import org.standclear.core.allocation.Allocator.Watcher;
import org.standclear.core.allocation.LeftOut;
import org.standclear.core.allocation.Level;
import org.standclear.core.allocation.PlanRules;
import org.standclear.core.allocation.Problem;
import org.standclear.core.allocation.Reasons;
import org.standclear.core.allocation.Solution;
import org.standclear.platform.ids.PersonId;
import org.standclear.platform.lab.LabScope;

/**
 * Searches for plans beside the pages, one at a time. Nothing but signs of life is written before the end, and then all
 * at once: a process that dies half way leaves a search that is shown as lost, and no plan.
 */
@Service
public class SearchDesk implements DisposableBean {

    private static final Logger LOG = LoggerFactory.getLogger(SearchDesk.class);
    private static final Duration SIGN_OF_LIFE = Duration.ofSeconds(1);
    private static final double WORK = 60;
    private static final Duration AT_MOST = Duration.ofMinutes(5);

    private final Windows windows;
    private final Searches searches;
    private final Plans plans;
    private final WindowProblem problems;
    private final Allocator allocator;
    private final TransactionTemplate transaction;
    private final ExecutorService searching = Executors.newSingleThreadExecutor(task -> thread(task, "allocation"));
    private final ScheduledExecutorService living =
            Executors.newSingleThreadScheduledExecutor(task -> thread(task, "allocation-alive"));

    SearchDesk(
            Windows windows,
            Searches searches,
            Plans plans,
            WindowProblem problems,
            Allocator allocator,
            PlatformTransactionManager transactions) {
        this.windows = windows;
        this.searches = searches;
        this.plans = plans;
        this.problems = problems;
        this.allocator = allocator;
        this.transaction = new TransactionTemplate(transactions);
    }

    private static Thread thread(Runnable task, String name) {
        Thread thread = new Thread(task, name);
        thread.setDaemon(true);
        return thread;
    }

    /** What came of asking for a search. */
    public sealed interface Begun {

        /** It goes on in the background. */
        record Searching(UUID search) implements Begun {}

        /** It does not, and why. */
        record Refused(String says) implements Begun {}
    }

    /** Begins when the caller's transaction has ended well; the caller has checked that the person may. */
    public Begun begin(UUID id, long seed, PersonId by) {
        return java.util.Objects.requireNonNull(transaction.execute(status -> {
            Window window = windows.lockForStaff(id, by);
            if (window.accepted() != null) {
                return new Begun.Refused("A plan for this window is accepted already. Undo it first.");
            }
            if (window.closed() != null) {
                return new Begun.Refused("The window is closed. Open it again first.");
            }
            Optional<Search> other = searches.of(id).stream()
                    .filter(search -> search.state() == State.RUNNING)
                    .findFirst();
            if (other.isPresent()) {
                return new Begun.Searching(other.get().id());
            }
            UUID search = searches.begin(id, seed, by);
            Watching watching = new Watching(search);
            Runnable work = LabScope.carry(() -> search(search, watching));
            afterCommit(() -> {
                // from the moment it waits for its turn: until then the searches before it may take minutes
                watching.live();
                searching.execute(work);
            });
            return new Begun.Searching(search);
        }));
    }

    private static void afterCommit(Runnable task) {
        TransactionSynchronizationManager.registerSynchronization(new TransactionSynchronization() {
            @Override
            public void afterCommit() {
                task.run();
            }
        });
    }

    private void search(UUID id, Watching watching) {
        try {
            Search search = searches.find(id).orElseThrow();
            Problem problem = problems.of(windows.find(search.window()).orElseThrow());
            Solution solution = allocator.solve(problem, new Effort(search.seed(), WORK, AT_MOST), watching);
            keep(search, problem, solution);
        } catch (RuntimeException | LinkageError failed) {
            LOG.error("search {} failed", id, failed);
            transaction.executeWithoutResult(status -> searches.end(
                    id, State.FAILED, Map.of(), "The search failed; nothing was booked. " + failed.getMessage()));
        } finally {
            watching.end();
        }
    }

    private void keep(Search search, Problem problem, Solution solution) {
        List<String> broken = new PlanRules(problem).broken(solution.plan());
        if (!broken.isEmpty()) {
            throw new IllegalStateException("the solver broke a rule: " + broken.get(0));
        }
        List<LeftOut> leftOut = new Reasons(problem).of(solution.plan());
        Map<Level, Value> standing = new EnumMap<>(Level.class);
        solution.score()
                .values()
                .forEach((level, value) ->
                        standing.put(level, new Value(value, solution.bounds().getOrDefault(level, 0L))));
        transaction.executeWithoutResult(status -> {
            State state = solution.stopped() ? State.STOPPED : State.FOUND;
            if (searches.end(search.id(), state, standing, "")) {
                plans.keep(search, solution.plan(), leftOut);
            }
        });
    }

    @Override
    public void destroy() {
        searching.shutdown();
        living.shutdown();
    }

    /** Keeps the latest progress for the next sign of life, and hears from the database whether to stop. */
    private final class Watching implements Watcher {

        private final UUID search;
        private final AtomicReference<Map<Level, Value>> standing = new AtomicReference<>(Map.of());
        private volatile boolean stop;
        private volatile @Nullable Future<?> signs;

        Watching(UUID search) {
            this.search = search;
        }

        void live() {
            signs = living.scheduleWithFixedDelay(this::sign, 0, SIGN_OF_LIFE.toMillis(), TimeUnit.MILLISECONDS);
        }

        void end() {
            Future<?> running = signs;
            if (running != null) {
                running.cancel(false);
            }
        }

        @Override
        public void progress(Progress progress) {
            Map<Level, Value> now = new EnumMap<>(Level.class);
            for (Map<Level, Long> values : List.of(progress.settled(), progress.values())) {
                values.forEach((level, value) ->
                        now.put(level, new Value(value, progress.bounds().getOrDefault(level, 0L))));
            }
            standing.set(now);
        }

        @Override
        public boolean stopped() {
            return stop || searching.isShutdown();
        }

        void sign() {
            try {
                stop = searches.alive(search, java.util.Objects.requireNonNull(standing.get()));
            } catch (RuntimeException databaseAway) {
                // the next sign tries again; without any the search counts as lost
                LOG.warn("no sign of life for search {}", search, databaseAway);
            }
        }
    }
}
