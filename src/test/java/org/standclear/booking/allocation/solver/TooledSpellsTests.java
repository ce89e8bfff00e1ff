package org.standclear.booking.allocation.solver;

import static org.assertj.core.api.Assertions.assertThat;

import com.google.ortools.Loader;
import java.time.Duration;
import java.time.Instant;
import java.util.ArrayList;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import java.util.Set;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import org.standclear.booking.allocation.solver.SatSearch.Ending;
import org.standclear.core.allocation.Allocator.Watcher;
import org.standclear.core.allocation.Attendant;
import org.standclear.core.allocation.Bench;
import org.standclear.core.allocation.FreeSlot;
import org.standclear.core.allocation.Level;
import org.standclear.core.allocation.Places;
import org.standclear.core.allocation.Plan;
import org.standclear.core.allocation.PlanRules;
import org.standclear.core.allocation.Problem;
import org.standclear.core.allocation.RushWeek;
import org.standclear.core.allocation.Score;
import org.standclear.core.allocation.Span;
import org.standclear.core.allocation.Times;
import org.standclear.core.allocation.Turn;
import org.standclear.core.allocation.Work;

/** Days placed one after the other, with the tools that the cells carry over night. */
class TooledSpellsTests {

    private static final Instant EIGHT = Instant.parse("2026-11-16T08:00:00Z");

    @BeforeAll
    static void loadTheSolver() {
        Loader.loadNativeLibraries();
    }

    private static Ending ending() {
        return new Ending(
                Watcher.none(), 1, System.nanoTime() + Duration.ofMinutes(2).toNanos());
    }

    private static BlockSearch settled(Problem problem) {
        BlockSearch search = new BlockSearch(problem, new Places(problem), Plan.EMPTY, ending());
        for (int stage = 0; stage < search.stages(); stage++) {
            SatStage one = search.stage(stage);
            search.hold(one, search.settle(one, Map.of(), 0, 5).values());
        }
        return search;
    }

    /** Both tools on each of four days: G V, V G, G V and V G need four changes; each day by itself from G on would need seven. */
    @Test
    void aToolStaysOverNight() {
        List<FreeSlot> slots = new ArrayList<>();
        List<Turn> turns = new ArrayList<>();
        for (int day = 0; day < 4; day++) {
            Instant morning = EIGHT.plus(Duration.ofDays(day));
            Span there = Span.minutes(morning, 60);
            slots.add(new FreeSlot("Avocet", Span.minutes(morning, 30)));
            slots.add(new FreeSlot("Avocet", Span.minutes(morning.plusSeconds(1800), 30)));
            for (String tool : List.of("G", "V")) {
                String id = tool + day;
                turns.add(new Turn(
                        id,
                        id,
                        null,
                        new Work(tool, 30, Set.of(), false),
                        new Times(there, List.of(there), List.of()),
                        false,
                        null));
            }
        }
        Span always = Span.minutes(EIGHT, 5L * 24 * 60);
        Problem problem = new Problem(
                List.of(new Bench("Avocet", Set.of("G", "V"), "G", Set.of())),
                slots,
                List.of(new Attendant("t", Set.of("Avocet"), List.of(always), true)),
                turns,
                Map.of(),
                Map.of(),
                List.of());

        Plan plan = new TooledSpells(problem, settled(problem), ending()).placed();

        assertThat(new PlanRules(problem).broken(plan)).isEmpty();
        assertThat(plan.placed()).hasSize(8);
        assertThat(Score.of(problem, plan).at(Level.TOOL_CHANGES)).isEqualTo(4);
    }

    /** Never more changes than the same numbers have when nobody looks at the tools. */
    @ParameterizedTest
    @ValueSource(longs = {1, 3, 4})
    void keepsTheRulesAndChangesToolsNoMoreOften(long seed) {
        Problem problem = new RushWeek(20, 3, 2, 36, seed).problem();
        BlockSearch search = settled(problem);
        Map<Level, Long> nothing = new EnumMap<>(Level.class);
        for (Level level : Level.values()) {
            nothing.put(level, 0L);
        }

        Plan plan = new TooledSpells(problem, search, ending()).placed();
        Plan other = new BySpells(problem, nothing, (turn, place) -> true, ending())
                .placed(search.model(), search.numbers());

        assertThat(new PlanRules(problem).broken(plan)).isEmpty();
        assertThat(plan.placed()).hasSameSizeAs(other.placed());
        assertThat(Score.of(problem, plan)).isLessThanOrEqualTo(Score.of(problem, other));
    }
}
