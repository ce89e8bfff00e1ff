package org.standclear.core.allocation;

import static org.assertj.core.api.Assertions.assertThat;

import java.time.Instant;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.stream.IntStream;
import org.jspecify.annotations.Nullable;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** The quick plan and the steps that make it better. Small cases are worked out by hand. */
class OwnStepsTests {

    private static final Instant EIGHT = Instant.parse("2026-11-16T08:00:00Z");
    private static final Span ALL_DAY = Span.minutes(EIGHT, 600);
    private static final Attendant TAL = new Attendant("Tal", Set.of("Avocet"), List.of(ALL_DAY), false);
    private static final long LOOKS = 2_000_000;

    private static Span at(int slot, int slots) {
        return Span.minutes(EIGHT.plusSeconds(1800L * slot), 30L * slots);
    }

    private static Turn turn(String id, String operator, String tool, int minutes, Span can, @Nullable Span wish) {
        List<Wish> wishes = wish == null ? List.of() : List.of(new Wish(null, wish));
        return new Turn(
                id,
                operator,
                null,
                new Work(tool, minutes, Set.of(), false),
                new Times(ALL_DAY, List.of(can), wishes),
                false,
                null);
    }

    private static Problem problem(int slots, Map<String, Integer> owed, Turn... turns) {
        return new Problem(
                List.of(new Bench("Avocet", Set.of("G", "V"), "G", Set.of())),
                IntStream.range(0, slots)
                        .mapToObj(slot -> new FreeSlot("Avocet", at(slot, 1)))
                        .toList(),
                List.of(TAL),
                List.of(turns),
                owed,
                Map.of(),
                List.of());
    }

    private static Plan better(Problem problem, Plan plan) {
        Plan better = new BetterPlan(problem, new Places(problem), () -> false).from(plan, 1, Map.of(), LOOKS);
        assertThat(new PlanRules(problem).broken(better)).isEmpty();
        return better;
    }

    private static Placed placed(Turn turn, int slot) {
        return new Placed(
                turn.id(),
                "Avocet",
                Span.minutes(at(slot, 1).from(), turn.work().minutes()),
                "Tal");
    }

    @Test
    void oneAfterTheOtherMovesOnSoThatAllHaveAPlace() {
        Turn[] turns = IntStream.range(0, 8)
                .mapToObj(number -> turn("t" + number, "p" + number, "G", 30, at(number, 2), null))
                .toArray(Turn[]::new);
        Turn first = turn("first", "q", "G", 30, at(0, 1), null);
        Problem problem = problem(
                9,
                Map.of(),
                IntStream.range(0, 9)
                        .mapToObj(number -> number < 8 ? turns[number] : first)
                        .toArray(Turn[]::new));
        Plan without = new Plan(IntStream.range(0, 8)
                .mapToObj(number -> placed(turns[number], number))
                .toList());

        assertThat(better(problem, without).placed()).hasSize(9);
    }

    @Test
    void twoTurnsComeInForALongerOne() {
        Turn longer = turn("longer", "p", "G", 45, ALL_DAY, null);
        Turn one = turn("one", "q", "G", 30, ALL_DAY, null);
        Turn two = turn("two", "r", "G", 30, ALL_DAY, null);
        Plan known = new Plan(List.of(placed(longer, 0)));

        assertThat(better(problem(2, Map.of(), longer, one, two), known).placed())
                .extracting(Placed::turn)
                .containsExactlyInAnyOrder("one", "two");
        Problem owed = problem(2, Map.of("p", 1), longer, one, two);
        assertThat(better(owed, known)).isEqualTo(known);
    }

    @Test
    void whoHasMoreGivesATurnToWhoHasLess() {
        Turn mine = turn("mine", "p", "G", 30, ALL_DAY, null);
        Turn mineToo = turn("mine too", "p", "G", 30, ALL_DAY, null);
        Turn yours = turn("yours", "q", "G", 30, at(0, 1), null);
        Turn yoursToo = turn("yours too", "q", "G", 30, at(1, 1), null);
        Problem problem = problem(2, Map.of(), mine, mineToo, yours, yoursToo);

        Plan even = better(problem, new Plan(List.of(placed(mine, 0), placed(mineToo, 1))));

        assertThat(Score.of(problem, even).at(Level.UNFAIRNESS)).isZero();
        assertThat(even.placed()).hasSize(2);
    }

    @Test
    void threeChangePlacesInACircleForTheirWishes() {
        Turn[] turns = IntStream.range(0, 3)
                .mapToObj(number -> turn("t" + number, "p" + number, "G", 30, ALL_DAY, at((number + 1) % 3, 1)))
                .toArray(Turn[]::new);
        Problem problem = problem(3, Map.of(), turns);
        Plan known = new Plan(IntStream.range(0, 3)
                .mapToObj(number -> placed(turns[number], number))
                .toList());

        assertThat(Score.of(problem, known).at(Level.WISHES)).isEqualTo(3);
        assertThat(Score.of(problem, better(problem, known)).at(Level.WISHES)).isZero();
    }

    @Test
    void turnsWithTheSameToolComeTogether() {
        Turn[] turns = IntStream.range(0, 4)
                .mapToObj(number -> turn("t" + number, "p" + number, number % 2 == 0 ? "G" : "V", 30, ALL_DAY, null))
                .toArray(Turn[]::new);
        Problem problem = problem(4, Map.of(), turns);
        Plan known = new Plan(IntStream.range(0, 4)
                .mapToObj(number -> placed(turns[number], number))
                .toList());

        assertThat(Score.of(problem, known).at(Level.TOOL_CHANGES)).isEqualTo(3);
        assertThat(Score.of(problem, better(problem, known)).at(Level.TOOL_CHANGES))
                .isEqualTo(1);
    }

    @ParameterizedTest
    @ValueSource(longs = {1, 2, 3})
    void keepTheRulesNeverGetWorseAndDependOnTheSeedOnly(long seed) {
        Problem problem = new RushWeek(40, 4, 3, 45, seed).problem();
        Plan first = new FirstPlan(problem, new Places(problem)).find();

        Plan better = better(problem, first);

        assertThat(new PlanRules(problem).broken(first)).isEmpty();
        assertThat(Score.of(problem, better)).isLessThanOrEqualTo(Score.of(problem, first));
        assertThat(better(problem, new FirstPlan(problem, new Places(problem)).find()))
                .isEqualTo(better);
    }

    @Test
    void aPartThatIsSearchedAgainFitsIntoTheRest() {
        Problem problem = new RushWeek(24, 2, 2, 18, 4).problem();
        Plan plan = new FirstPlan(problem, new Places(problem)).find();
        Set<String> some = Set.of("p0-0", "p0-1", "p1-0", "p1-1", "p4-0", "p5-1", "p10-0");

        PlanPart part = new PlanPart(problem, plan, some);
        Plan again = new FirstPlan(part.problem(), new Places(part.problem())).find();

        assertThat(part.problem().turns()).extracting(Turn::id).containsExactlyInAnyOrderElementsOf(some);
        assertThat(new PlanRules(part.problem()).broken(part.now())).isEmpty();
        assertThat(new PlanRules(part.problem()).broken(again)).isEmpty();
        assertThat(new PlanRules(problem).broken(part.with(again))).isEmpty();
        assertThat(part.with(part.now())).isEqualTo(plan);
        assertThat(Score.of(problem, plan).at(Level.UNPLACED)
                        - Score.of(part.problem(), part.now()).at(Level.UNPLACED))
                .isEqualTo(problem.turns().stream()
                        .filter(turn -> !some.contains(turn.id()))
                        .filter(turn -> plan.placed().stream()
                                .noneMatch(one -> one.turn().equals(turn.id())))
                        .count());
    }

    /** Other places for the same turns, none of which costs more. */
    @ParameterizedTest
    @ValueSource(longs = {1, 2, 3})
    void toolChangesBecomeFewerForNoWish(long seed) {
        Problem problem = new RushWeek(40, 3, 6, 36, seed).problem();
        BetterPlan better = new BetterPlan(problem, new Places(problem), () -> false);
        Plan start = new FirstPlan(problem, new Places(problem)).find();

        Plan plan = better.withFewerToolChanges(start, seed, LOOKS);

        Score before = Score.of(problem, start);
        Score after = Score.of(problem, plan);
        assertThat(new PlanRules(problem).broken(plan)).isEmpty();
        assertThat(after).isLessThan(before);
        assertThat(after.at(Level.WISHES)).isLessThanOrEqualTo(before.at(Level.WISHES));
        assertThat(after.at(Level.TOOL_CHANGES)).isLessThan(before.at(Level.TOOL_CHANGES));
    }

    /** A walk at one warmth also takes what is worse: a longer one of the same seed still never ends with more. */
    @ParameterizedTest
    @ValueSource(longs = {1, 2, 3})
    void theFewestToolChangesOfAWalkStand(long seed) {
        Problem problem = new RushWeek(60, 3, 4, 54, seed).problem();
        BetterPlan better = new BetterPlan(problem, new Places(problem), () -> false);
        Plan start = new FirstPlan(problem, new Places(problem)).find();
        Score before = Score.of(problem, start);

        long changes = before.at(Level.TOOL_CHANGES) - 1;
        for (long looks = LOOKS / 4; looks <= LOOKS; looks += LOOKS / 40) {
            Plan plan = better.withFewestToolChanges(start, seed, 0, looks);
            Score after = Score.of(problem, plan);
            assertThat(new PlanRules(problem).broken(plan)).isEmpty();
            assertThat(after.at(Level.WISHES)).isLessThanOrEqualTo(before.at(Level.WISHES));
            assertThat(after.at(Level.TOOL_CHANGES)).isLessThanOrEqualTo(changes);
            changes = after.at(Level.TOOL_CHANGES);
        }
    }

    @Test
    void aWalkEndsWhereNothingIsLeftToFindOrWhenItIsStopped() {
        Problem problem = new RushWeek(60, 3, 4, 54, 1).problem();
        Places places = new Places(problem);
        Plan start = new FirstPlan(problem, places).find();
        long before = Score.of(problem, start).at(Level.TOOL_CHANGES);

        Plan enough = new BetterPlan(problem, places, () -> false).withFewestToolChanges(start, 1, before - 6, LOOKS);
        Plan most = new BetterPlan(problem, places, () -> false).withFewestToolChanges(start, 1, 0, LOOKS);
        Plan stopped = new BetterPlan(problem, places, () -> true).withFewestToolChanges(start, 1, 0, LOOKS);

        // an exchange saves four at most
        assertThat(Score.of(problem, enough).at(Level.TOOL_CHANGES)).isBetween(before - 9, before - 6);
        assertThat(Score.of(problem, most).at(Level.TOOL_CHANGES)).isLessThan(before - 9);
        assertThat(stopped).isEqualTo(start);
    }
}
