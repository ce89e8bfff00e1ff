package org.standclear.core.allocation;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.time.Instant;
import java.util.List;
import java.util.Map;
import java.util.Set;
import org.junit.jupiter.api.Test;
import org.standclear.core.allocation.LeftOut.Rule;

/** Each rule of a plan on a small lab: kept, and broken by one plan each; and the reason it gives for leaving out. */
class PlanRulesTests {

    private static final Instant EIGHT = Instant.parse("2026-11-16T08:00:00Z");
    private static final Span ALL_DAY = Span.minutes(EIGHT, 600);
    private static final Bench AVOCET = new Bench("Avocet", Set.of("G-02"), "G-02", Set.of("lower bench"));
    private static final Bench BITTERN = new Bench("Bittern", Set.of("V-01"), "V-01", Set.of());
    private static final Attendant TAL = new Attendant("Tal", Set.of("Avocet", "Bittern"), List.of(ALL_DAY), false);
    private static final Work GRIP = new Work("G-02", 30, Set.of(), false);
    private static final Times ANY = new Times(ALL_DAY, List.of(ALL_DAY), List.of());
    private static final Turn NOORS = new Turn("noor-1", "Noor", null, GRIP, ANY, false, null);

    private static Span at(int minutes) {
        return Span.minutes(EIGHT.plusSeconds(60L * minutes), 30);
    }

    private static List<FreeSlot> slots() {
        return List.of(
                new FreeSlot("Avocet", at(0)),
                new FreeSlot("Avocet", at(30)),
                new FreeSlot("Avocet", at(90)),
                new FreeSlot("Bittern", at(7)));
    }

    private static Problem problem(Turn... turns) {
        return new Problem(
                List.of(AVOCET, BITTERN), slots(), List.of(TAL), List.of(turns), Map.of(), Map.of(), List.of());
    }

    private static Turn with(Work work, Times times) {
        return new Turn("noor-1", "Noor", null, work, times, false, null);
    }

    private static List<String> broken(Problem problem, Placed... placed) {
        return new PlanRules(problem).broken(new Plan(List.of(placed)));
    }

    private static Placed placed(String turn, String cell, Span span) {
        return new Placed(turn, cell, span, "Tal");
    }

    private static Rule why(Problem problem, Placed... placed) {
        return reason(problem, placed).rule();
    }

    @Test
    void keepsAPlanThatFits() {
        assertThat(broken(problem(NOORS), placed("noor-1", "Avocet", at(0)))).isEmpty();
    }

    @Test
    void refusesATurnThatNobodyAskedForOrThatIsThereTwice() {
        assertThat(broken(problem(NOORS), placed("kofi-1", "Avocet", at(0)))).hasSize(1);
        assertThat(broken(problem(NOORS), placed("noor-1", "Avocet", at(0)), placed("noor-1", "Avocet", at(30))))
                .containsExactly("noor-1 has two places");
    }

    @Test
    void refusesAToolThatTheCellHasNot() {
        Problem vacuum = problem(with(new Work("S-03", 30, Set.of(), false), ANY));

        assertThat(broken(vacuum, placed("noor-1", "Avocet", at(0))))
                .singleElement()
                .asString()
                .contains("tool");
        assertThat(why(vacuum)).isEqualTo(Rule.TOOL);
    }

    @Test
    void refusesACellWithoutWhatIsNeeded() {
        Problem needs = problem(with(new Work("V-01", 30, Set.of("lower bench"), false), ANY));

        assertThat(broken(needs, placed("noor-1", "Bittern", at(7))))
                .singleElement()
                .asString()
                .contains("needs");
        assertThat(why(needs)).isEqualTo(Rule.NEEDS);
    }

    @Test
    void aLongerTurnTakesTheNextSlotToo() {
        Turn longer = with(new Work("G-02", 45, Set.of(), false), ANY);
        Turn other = new Turn("kofi-1", "Kofi", null, GRIP, ANY, false, null);
        Placed first = placed("noor-1", "Avocet", Span.minutes(EIGHT, 45));

        assertThat(broken(problem(longer), first)).isEmpty();
        assertThat(broken(problem(longer), placed("noor-1", "Avocet", at(0)))).hasSize(1);
        assertThat(broken(problem(longer), placed("noor-1", "Avocet", Span.minutes(at(90).from(), 45))))
                .singleElement()
                .asString()
                .contains("free slots");
        assertThat(broken(problem(longer, other), first, new Placed("kofi-1", "Avocet", at(30), "Tal")))
                .anyMatch(says -> says.startsWith("Avocet is in two places"));
        assertThat(new Places(problem(longer)).of(longer)).hasSize(1);
    }

    @Test
    void refusesTimesOutsideTheWindowAndWhenTheyCannotCome() {
        Problem due = problem(with(GRIP, new Times(at(0), List.of(ALL_DAY), List.of())));
        Problem away = problem(with(GRIP, new Times(ALL_DAY, List.of(at(30)), List.of())));

        assertThat(broken(due, placed("noor-1", "Avocet", at(30))))
                .singleElement()
                .asString()
                .contains("window");
        assertThat(broken(due, placed("noor-1", "Avocet", at(0)))).isEmpty();
        assertThat(broken(away, placed("noor-1", "Avocet", at(0))))
                .singleElement()
                .asString()
                .contains("cannot come");
        assertThat(why(problem(with(GRIP, new Times(at(60), List.of(ALL_DAY), List.of())))))
                .isEqualTo(Rule.WINDOW);
        assertThat(why(problem(with(GRIP, new Times(ALL_DAY, List.of(at(60)), List.of())))))
                .isEqualTo(Rule.TIMES);
    }

    @Test
    void refusesClosedTimes() {
        Problem closed = new Problem(
                List.of(AVOCET),
                slots(),
                List.of(TAL),
                List.of(NOORS),
                Map.of(),
                Map.of(),
                List.of(new Closed(null, ALL_DAY)));

        assertThat(broken(closed, placed("noor-1", "Avocet", at(0))))
                .singleElement()
                .asString()
                .contains("kept");
        assertThat(why(closed)).isEqualTo(Rule.CLOSED);
    }

    @Test
    void nobodyIsInTwoPlaces() {
        Turn second = new Turn("noor-2", "Noor", null, new Work("V-01", 30, Set.of(), false), ANY, false, null);
        Turn other = new Turn("kofi-1", "Kofi", null, new Work("V-01", 30, Set.of(), false), ANY, false, null);

        assertThat(broken(
                        problem(NOORS, second), placed("noor-1", "Avocet", at(0)), placed("noor-2", "Bittern", at(7))))
                .anyMatch(says -> says.startsWith("Noor is in two places"))
                .anyMatch(says -> says.startsWith("Tal is in two places"));
        assertThat(broken(problem(NOORS, other), placed("noor-1", "Avocet", at(0)), placed("kofi-1", "Bittern", at(7))))
                .singleElement()
                .asString()
                .startsWith("Tal is in two places");
        assertThat(broken(
                        problem(NOORS, second), placed("noor-1", "Avocet", at(90)), placed("noor-2", "Bittern", at(7))))
                .isEmpty();
    }

    @Test
    void theAttendantIsAuthorisedFreeAndNotTheOperator() {
        Turn tals = new Turn("tal-1", "Tal", null, GRIP, ANY, false, null);
        Problem busy = new Problem(
                List.of(AVOCET),
                slots(),
                List.of(TAL),
                List.of(NOORS),
                Map.of(),
                Map.of("Tal", List.of(ALL_DAY)),
                List.of());

        assertThat(broken(problem(tals), placed("tal-1", "Avocet", at(0))))
                .anyMatch(says -> says.contains("by its operator"));
        assertThat(broken(problem(NOORS), new Placed("noor-1", "Avocet", at(0), "Kofi")))
                .anyMatch(says -> says.contains("without the authorisation"));
        assertThat(broken(busy, placed("noor-1", "Avocet", at(0)))).anyMatch(says -> says.contains("two places"));
        assertThat(why(problem(tals))).isEqualTo(Rule.ATTENDANT);
        assertThat(why(busy)).isEqualTo(Rule.ATTENDANT);
    }

    @Test
    void aHelperIsWhoCanHelp() {
        Problem helped = problem(with(new Work("G-02", 30, Set.of(), true), ANY));

        assertThat(broken(helped, placed("noor-1", "Avocet", at(0)))).anyMatch(says -> says.contains("no helper"));
        assertThat(why(helped)).isEqualTo(Rule.ATTENDANT);
    }

    @Test
    void thePartnerAttendsThePair() {
        Turn pair = new Turn("noor-1", "Noor", "Mateo", GRIP, ANY, false, null);

        assertThat(broken(problem(pair), placed("noor-1", "Avocet", at(0))))
                .singleElement()
                .asString()
                .contains("another than the partner");
        assertThat(why(problem(pair))).isEqualTo(Rule.PARTNER);
        assertThat(reason(problem(pair)).says()).contains("is not authorised as e-stop attendant there");
        Turn tals = new Turn("noor-1", "Noor", "Tal", new Work("G-02", 30, Set.of(), true), ANY, false, null);
        assertThat(reason(problem(tals)).rule()).isEqualTo(Rule.PARTNER);
        assertThat(reason(problem(tals)).says())
                .as("Tal is authorised and free")
                .startsWith("The partner cannot be who attends this turn. Ask without a partner")
                .doesNotContain("not authorised");
    }

    @Test
    void saysWhetherOthersHaveThePlaceOrTheAttendant() {
        Turn kofis = new Turn("kofi-1", "Kofi", null, GRIP, new Times(ALL_DAY, List.of(at(0)), List.of()), false, null);
        Turn leilanis = new Turn("leilani-1", "Leilani", null, new Work("V-01", 30, Set.of(), false), ANY, false, null);

        assertThat(why(problem(NOORS, kofis), placed("noor-1", "Avocet", at(0))))
                .isEqualTo(Rule.TAKEN);
        assertThat(why(problem(NOORS, leilanis), placed("noor-1", "Avocet", at(0))))
                .isEqualTo(Rule.ATTENDANTS_TAKEN);
        assertThat(why(problem(NOORS, kofis), placed("kofi-1", "Avocet", at(0))))
                .isEqualTo(Rule.NOT_FOUND);
    }

    @Test
    void doesNotSayThatOthersHaveWhatTheSamePersonHas() {
        Times eight = new Times(ALL_DAY, List.of(at(0)), List.of());
        Turn first = new Turn("noor-1", "Noor", null, GRIP, eight, false, null);
        Turn second = new Turn("noor-2", "Noor", null, GRIP, eight, false, null);
        Turn another = new Turn(
                "noor-2", "Noor", null, GRIP, new Times(ALL_DAY, List.of(at(0), at(30)), List.of()), false, null);
        Turn kofis = new Turn("kofi-1", "Kofi", null, GRIP, ANY, false, null);

        LeftOut own = reason(problem(first, second), placed("noor-1", "Avocet", at(0)));
        assertThat(own.rule()).isEqualTo(Rule.OWN_TURNS);
        assertThat(own.says()).startsWith("1 place fits these times, and the same people have another turn");
        LeftOut both = reason(
                problem(first, another, kofis), placed("noor-1", "Avocet", at(0)), placed("kofi-1", "Avocet", at(30)));
        assertThat(both.rule()).isEqualTo(Rule.TAKEN);
        assertThat(both.says()).contains("others have them or the same people have another turn then");
        assertThat(reason(problem(second, kofis), placed("kofi-1", "Avocet", at(0)))
                        .says())
                .isEqualTo("1 place fits these times, and others have it: there are more turns than slots."
                        + " More times to come would help.");
    }

    private static LeftOut reason(Problem problem, Placed... placed) {
        return new Reasons(problem).of(new Plan(List.of(placed))).get(0);
    }

    @Test
    void refusesToCompareMoreTurnsThanItCan() {
        Turn[] thirteen = java.util.stream.IntStream.range(0, 13)
                .mapToObj(turn -> new Turn("noor-" + turn, "Noor", null, GRIP, ANY, false, null))
                .toArray(Turn[]::new);

        assertThatThrownBy(() -> problem(thirteen)).hasMessageContaining("13 turns");
        assertThat(problem(java.util.Arrays.copyOf(thirteen, 12)).asked()).containsEntry("Noor", 12);
    }

    @Test
    void takesTimesThatTouchForOne() {
        Span across = new Span(at(0).from().plusSeconds(900), at(0).until().plusSeconds(900));
        Attendant until = new Attendant("Tal", Set.of("Avocet"), List.of(at(30), at(0)), false);
        Attendant gap = new Attendant("Tal", Set.of("Avocet"), List.of(at(0), at(31)), false);

        assertThat(new Times(ALL_DAY, List.of(at(0), at(30)), List.of()).allow(across))
                .isTrue();
        assertThat(new Times(ALL_DAY, List.of(at(0), at(31)), List.of()).allow(across))
                .isFalse();
        assertThat(until.canAttend("Avocet", across, false)).isTrue();
        assertThat(gap.canAttend("Avocet", across, false)).isFalse();
        assertThat(Span.joined(List.of(ALL_DAY, at(30), at(0)))).containsExactly(ALL_DAY);
    }
}
