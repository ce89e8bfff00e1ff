package org.standclear.booking.allocation.solver;

import static org.assertj.core.api.Assertions.assertThat;

import java.time.Duration;
import java.util.Set;
import java.util.concurrent.ConcurrentHashMap;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import org.standclear.booking.allocation.solver.SatSearch.Ending;
import org.standclear.core.allocation.Allocator.Progress;
import org.standclear.core.allocation.Allocator.Watcher;
import org.standclear.core.allocation.BetterPlan;
import org.standclear.core.allocation.FirstPlan;
import org.standclear.core.allocation.Level;
import org.standclear.core.allocation.Places;
import org.standclear.core.allocation.Plan;
import org.standclear.core.allocation.PlanRules;
import org.standclear.core.allocation.Problem;
import org.standclear.core.allocation.RushWeek;
import org.standclear.core.allocation.Score;

/** Fewer tool changes by two walks at a time. */
class ToolWalksTests {

    private static Ending ending(Watcher watcher) {
        return new Ending(watcher, 3, System.nanoTime() + Duration.ofMinutes(2).toNanos());
    }

    private static Plan quick(Problem problem) {
        Places places = new Places(problem);
        return new BetterPlan(problem, places, () -> false)
                .withBetterPlaces(new FirstPlan(problem, places).find(), 1, 1_000_000);
    }

    /** Two threads, and the same plan each time: also when they are the first to ask for the places. */
    @ParameterizedTest
    @ValueSource(longs = {1, 2})
    void theSameSeedGivesTheSamePlanWithFewerChanges(long seed) {
        Problem problem = new RushWeek(40, 3, 4, 45, seed).problem();
        Plan start = quick(problem);

        Plan plan = new ToolWalks(problem, new Places(problem), ending(Watcher.none())).from(start, 0);
        Plan again = new ToolWalks(problem, new Places(problem), ending(Watcher.none())).from(start, 0);

        Score before = Score.of(problem, start);
        Score after = Score.of(problem, plan);
        assertThat(again).isEqualTo(plan);
        assertThat(new PlanRules(problem).broken(plan)).isEmpty();
        assertThat(after.at(Level.WISHES)).isLessThanOrEqualTo(before.at(Level.WISHES));
        assertThat(after.at(Level.TOOL_CHANGES)).isLessThan(before.at(Level.TOOL_CHANGES));
    }

    @Test
    void looksNoFurtherThanWhatIsKnown() {
        Problem problem = new RushWeek(40, 3, 4, 45, 1).problem();
        Plan start = quick(problem);
        long least = Score.of(problem, start).at(Level.TOOL_CHANGES);

        assertThat(new ToolWalks(problem, new Places(problem), ending(Watcher.none())).from(start, least))
                .isEqualTo(start);
    }

    /** Stopped while both walk: each asks by itself, and neither goes on. */
    @Test
    void stoppingEndsBothWalks() {
        Problem problem = new RushWeek(40, 3, 4, 45, 1).problem();
        Plan start = quick(problem);
        Set<Thread> asked = ConcurrentHashMap.newKeySet();
        Watcher watcher = new Watcher() {
            @Override
            public void progress(Progress progress) {
                // nobody asked
            }

            @Override
            public boolean stopped() {
                asked.add(Thread.currentThread());
                return asked.size() == 2;
            }
        };

        Plan plan = new ToolWalks(problem, new Places(problem), ending(watcher)).from(start, 0);

        assertThat(new PlanRules(problem).broken(plan)).isEmpty();
        assertThat(asked).hasSize(2).contains(Thread.currentThread());
        assertThat(asked).allMatch(one -> one == Thread.currentThread() || !one.isAlive());
    }
}
