package org.standclear.booking.allocation.solver;

import static org.assertj.core.api.Assertions.assertThat;

import com.google.ortools.Loader;
import java.time.Instant;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.stream.IntStream;
import java.util.stream.Stream;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import org.standclear.core.allocation.Attendant;
import org.standclear.core.allocation.Bench;
import org.standclear.core.allocation.FreeSlot;
import org.standclear.core.allocation.Level;
import org.standclear.core.allocation.Placed;
import org.standclear.core.allocation.Places;
import org.standclear.core.allocation.Plan;
import org.standclear.core.allocation.Problem;
import org.standclear.core.allocation.Score;
import org.standclear.core.allocation.Span;
import org.standclear.core.allocation.Times;
import org.standclear.core.allocation.Turn;
import org.standclear.core.allocation.Wish;
import org.standclear.core.allocation.Work;

/** How many turns each may have, and what that does to plans that are made day by day. */
class FairRangesTests {

    private static final Instant EIGHT = Instant.parse("2026-11-16T08:00:00Z");
    private static final Span MORNING = Span.minutes(EIGHT, 120);
    private static final Span EARLIER = new Span(EIGHT.minusSeconds(7200), EIGHT);

    @BeforeAll
    static void loadTheSolver() {
        Loader.loadNativeLibraries();
    }

    /** Three people ask for three turns each of four slots in all; only one of them wishes for what there is. */
    private static Problem fourSlots(Span whenTheFirstCanCome) {
        List<Turn> turns = Stream.of("p", "q", "r")
                .flatMap(operator -> IntStream.range(0, 3).mapToObj(number -> {
                    Span comes = operator.equals("p") ? whenTheFirstCanCome : MORNING;
                    List<Wish> wishes = operator.equals("q") ? List.of() : List.of(new Wish(null, EARLIER));
                    return new Turn(
                            operator + number,
                            operator,
                            null,
                            new Work("G", 30, Set.of(), false),
                            new Times(new Span(EARLIER.from(), MORNING.until()), List.of(comes), wishes),
                            false,
                            null);
                }))
                .toList();
        return new Problem(
                List.of(new Bench("Avocet", Set.of("G"), "G", Set.of())),
                IntStream.range(0, 4)
                        .mapToObj(slot -> new FreeSlot("Avocet", Span.minutes(EIGHT.plusSeconds(1800L * slot), 30)))
                        .toList(),
                List.of(new Attendant("helper", Set.of("Avocet"), List.of(MORNING), true)),
                turns,
                Map.of("p", 1, "q", 1, "r", 1),
                Map.of(),
                List.of());
    }

    /** Two turns of q and two of r. */
    private static Plan twoEach(Problem problem) {
        List<String> ids = List.of("q0", "q1", "r0", "r1");
        return new Plan(IntStream.range(0, 4)
                .mapToObj(slot -> new Placed(
                        ids.get(slot), "Avocet", problem.slots().get(slot).span(), "helper"))
                .toList());
    }

    /** Who can have nothing has the smallest share: that the others come further apart is no plan as fair. */
    @Test
    void isAsFairWhereSomebodyCannotReachTheMinimum() {
        Problem problem = fourSlots(EARLIER);
        Plan start = twoEach(problem);
        DayByDay days = DayByDayTests.days(problem, start);

        Plan plan = days.plan();

        assertThat(Score.of(problem, start).at(Level.UNDER_MINIMUM)).isEqualTo(1);
        assertThat(DayByDayTests.isAsFair(problem, plan, Score.of(problem, start)))
                .isTrue();
        assertThat(Score.of(problem, plan).at(Level.WISHES)).isEqualTo(2);
        assertThat(days.bounds()).containsEntry(Level.WISHES, 2L);
    }

    /** Of a plan that is less fair than it could be the own smallest share is kept to; the bound allows for the other. */
    @Test
    void isAsFairWhereTheSmallestShareCouldBeAnother() {
        Problem problem = fourSlots(MORNING);
        Plan start = twoEach(problem);
        FairRanges all = new FlowBound(problem, new Places(problem)).ranges(Score.of(problem, start));
        DayByDay days = DayByDayTests.days(problem, start);

        Plan plan = days.plan();

        assertThat(all.areExact()).isFalse();
        assertThat(all.of("q")).isEqualTo(new FairRanges.Range(0, 3));
        assertThat(all.around(start).of("q")).isEqualTo(new FairRanges.Range(0, 2));
        assertThat(DayByDayTests.isAsFair(problem, plan, Score.of(problem, start)))
                .isTrue();
        assertThat(Score.of(problem, plan).at(Level.WISHES)).isEqualTo(2);
        assertThat(days.bounds().get(Level.WISHES)).isBetween(1L, 2L);
    }
}
