package org.standclear.core.limits;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;
import static org.standclear.core.Outcomes.details;
import static org.standclear.core.Outcomes.outcome;

import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.EnumSource;
import org.standclear.core.CellText;
import org.standclear.core.SheetText;
import org.standclear.core.cell.BodyRegion;
import org.standclear.core.check.CheckAnswer;
import org.standclear.core.check.CheckRequest;
import org.standclear.core.check.ProgramCheck;

/** Contact and separation against published numbers; ISO/TS 15066:2016 as quoted in public texts (S). */
class PublishedTablesTests {

    private static final ContactTable TABLE = ContactTableReader.shipped();

    private static double permitted(BodyRegion region, double robotMass) {
        return TABLE.permittedMmS(region, robotMass) / 1000;
    }

    /** Annex A worked example (S): 140 N, 75 N/mm, 0.6 kg, m_R 8.9 kg: 0.682 m/s for a lasting force; twice as transient. */
    @Test
    void agreesWithTheWorkedExample() {
        assertThat(permitted(BodyRegion.HAND_AND_FINGERS, 8.9)).isCloseTo(2 * 0.682, within(2 * 5e-4));
    }

    /** Exact by hand (C). */
    @Test
    void agreesWithExactValues() {
        assertThat(permitted(BodyRegion.UPPER_ARM_AND_ELBOW, 1)).isCloseTo(2.000, within(1e-9));
        assertThat(permitted(BodyRegion.LOWER_ARM_AND_WRIST, 2)).isCloseTo(1.600, within(1e-9));
    }

    /** Computed from the published table by another program (C). */
    @ParameterizedTest
    @CsvSource({
        "CHEST, 1.793, 1.283, 0.840, 0.626, 0.485",
        "LOWER_ARM_AND_WRIST, 1.960, 1.600, 1.339, 1.239, 1.187",
        "HAND_AND_FINGERS, 1.670, 1.505, 1.397, 1.359, 1.340",
        "LOWER_LEG, 1.068, 0.760, 0.490, 0.357, 0.267"
    })
    void agreesWithTheTableOfSpeeds(BodyRegion region, double one, double two, double five, double ten, double twenty) {
        double[] speeds = {one, two, five, ten, twenty};
        double[] masses = {1, 2, 5, 10, 20};
        for (int i = 0; i < masses.length; i++) {
            assertThat(permitted(region, masses[i])).isCloseTo(speeds[i], within(5e-4));
        }
    }

    /** More load lowers the speed; doubling 8.9 kg changes that of the hand by less than 5 % (S). */
    @ParameterizedTest
    @EnumSource(BodyRegion.class)
    void allowsLessWithMoreLoad(BodyRegion region) {
        boolean forbidden = region == BodyRegion.FACE || region == BodyRegion.SKULL_AND_FOREHEAD;
        if (forbidden) {
            assertThat(permitted(region, 1)).isZero();
            return;
        }
        assertThat(permitted(region, 2)).isLessThan(permitted(region, 1));
        assertThat(permitted(BodyRegion.HAND_AND_FINGERS, 17.8))
                .isGreaterThan(0.95 * permitted(BodyRegion.HAND_AND_FINGERS, 8.9));
    }

    @Test
    void listsNoForbiddenRegionAtAnySpeed() {
        CellText cell = CellText.scara()
                .with(
                        "[hand-and-fingers, lower-arm-and-wrist], rule: advised",
                        "[hand-and-fingers, face], rule: required");
        CheckAnswer answer = SheetText.scara().checkedOn(cell);

        assertThat(outcome(answer, Check.CONTACT)).isEqualTo("outside");
        assertThat(details(answer, Check.CONTACT).limit()).isEqualTo(0.0);
        assertThat(answer.contact())
                .extracting(ContactSpeeds.Permitted::permittedMmS)
                .contains(0.0);
        CellText advised = cell.with("rule: required}\n", "rule: advised}\n");
        assertThat(outcome(SheetText.scara().checkedOn(advised), Check.CONTACT)).isEqualTo("caution");
    }

    @Test
    void takesTheCollegesOwnTable() {
        StringBuilder own = new StringBuilder("contact-table: 1\nname: ours\nprovenance: own copy\nregions:\n");
        for (BodyRegion region : BodyRegion.values()) {
            own.append("  ")
                    .append(region.word())
                    .append(
                            ": {contact: true, quasi-static-n: 1, stiffness-n-per-mm: 100, mass-kg: 5, source: page 9}\n");
        }
        ContactTable table = ContactTableReader.read(own.toString()).value();
        CheckAnswer answer = ProgramCheck.check(CheckRequest.of(
                                CellText.scara().cell(), SheetText.scara().file())
                        .with(table))
                .value();

        assertThat(outcome(answer, Check.CONTACT)).isEqualTo("caution");
        assertThat(details(answer, Check.CONTACT).says())
                .endsWith("Used is the table \"ours\" (hand-and-fingers: page 9).");
        assertThat(ContactTableReader.read(own.toString().replace("  face:", "  nose:"))
                        .badInput())
                .isPresent();
        assertThat(ContactTableReader.read(own.substring(0, own.indexOf("  lower-leg")))
                        .badInput()
                        .orElseThrow()
                        .says())
                .contains("lower-leg");
    }

    @Test
    void takesTheRestOfAnOwnTableFromTheShippedOne() {
        String own = "contact-table: 1\nname: ours\nprovenance: own copy\nregions:\n  hand-and-fingers:"
                + " {contact: true, quasi-static-n: 70, stiffness-n-per-mm: 75, mass-kg: 0.6, source: page 9}\n";

        assertThat(ContactTableReader.read(own).badInput().orElseThrow().sentence())
                .isEqualTo(
                        "line 4: the regions have no skull-and-forehead; it is needed, or write rest: shipped to take the"
                                + " rest from the shipped table");
        ContactTable table = ContactTableReader.read(own.replace("regions:", "rest: shipped\nregions:"))
                .value();
        // half the force is half the speed
        assertThat(table.permittedMmS(BodyRegion.HAND_AND_FINGERS, 8.9))
                .isEqualTo(TABLE.permittedMmS(BodyRegion.HAND_AND_FINGERS, 8.9) / 2);
        assertThat(table.permittedMmS(BodyRegion.CHEST, 8.9)).isEqualTo(TABLE.permittedMmS(BodyRegion.CHEST, 8.9));
    }

    @Test
    void takesTheCellsOwnValuesBeforeAnyTable() {
        String own = "values: {hand-and-fingers: {contact: true, quasi-static-n: 1.4, stiffness-n-per-mm: 75,"
                + " mass-kg: 0.6, source: measured 3 March}}";
        CellText cell =
                CellText.scara().with("rule: advised}\n  stand-line", "rule: advised, " + own + "}\n  stand-line");
        CheckAnswer answer = SheetText.scara().checkedOn(cell);

        assertThat(outcome(answer, Check.CONTACT)).isEqualTo("caution");
        assertThat(details(answer, Check.CONTACT).says())
                .endsWith("Used is the cell's own values (hand-and-fingers: measured 3 March).");
    }

    @Test
    void saysOfEachShippedValueWhereItComesFrom() {
        for (BodyRegion region : BodyRegion.values()) {
            assertThat(TABLE.source(region)).contains("ISO/TS 15066:2016 Annex A");
        }
        assertThat(TABLE.source(BodyRegion.BACK_AND_SHOULDERS)).contains("one public text only");
    }

    /** ISO/TS 15066 5.5.4 (S): v_h 1.6, T_r 0.1, T_s 0.3, C 0.2, Z 0.10 + 0.05; 0.25 m/s gives 1.0525 m (C). */
    @ParameterizedTest
    @CsvSource({
        "1000, 0.1, 1240",
        "500, 0.1, 1115",
        "1000, 0.2, 1500",
        "2040, 0.1, 1500",
        "997, 0.1, 1239.25",
        "250, 0.1, 1052.5"
    })
    void agreesWithPublishedSeparations(double speed, double reaction, double distance) {
        CellText cell = CellText.gantry()
                .with("power: reduced", "power: full")
                .with("override-percent: 50", "override-percent: 100")
                .with("straight: {speed: 400, acceleration: 2000}", "straight: {speed: 5000, acceleration: 90000}")
                .with("reaction-s: 0.10", "reaction-s: " + reaction);
        CheckAnswer answer = SheetText.of(
                        "a: {x: 20, y: 100, z: 50, yaw: 0}\nb: {x: 520, y: 100, z: 50, yaw: 0}",
                        "{straight: b, speed-mm-s: " + speed + "}")
                .startingAt("a")
                .with("power: reduced", "power: full")
                .with("override-percent: 50", "override-percent: 100")
                .checkedOn(cell);

        // the published metres have two decimals where they are not exact
        assertThat(answer.figures().separationMm()).isCloseTo(distance, within(speed == 2040 ? 1 : 1e-6));
    }

    /** The same at rest: 0.99 m (S). */
    @Test
    void keepsADistanceFromAnArmAtRest() {
        CheckAnswer answer = SheetText.of("a: {x: 0, y: 300, z: 50, yaw: 0, elbow: right}", "wait-s: 1")
                .checkedOn(CellText.scara());

        assertThat(answer.figures().separationMm()).isCloseTo(990, within(1e-9));
        assertThat(answer.figures().stopTravelMm(0.5)).isEqualTo(0.0);
    }

    @Test
    void tellsTheWayUntilTheArmStands() {
        CheckAnswer answer = SheetText.scara().checkedOn(CellText.scara());
        double fastest = answer.figures().knownFastestMmS();

        assertThat(answer.figures().stopTravelMm(0.5)).isCloseTo(fastest * (0.5 + 0.1 + 0.15), within(1e-9));
        assertThat(answer.figures().stopTravelMm(1.0)).isCloseTo(fastest * (1.0 + 0.1 + 0.15), within(1e-9));
    }
}
