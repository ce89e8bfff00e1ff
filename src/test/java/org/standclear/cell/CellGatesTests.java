package org.standclear.cell;

import static org.assertj.core.api.Assertions.assertThat;

import java.time.Instant;
import java.time.LocalDate;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.UUID;
import org.jspecify.annotations.Nullable;
import org.junit.jupiter.api.Test;
import org.standclear.platform.ids.CellId;
import org.standclear.platform.ids.LabId;
import org.standclear.platform.ids.PersonId;

class CellGatesTests {

    private static final Instant TAGGED = Instant.parse("2026-03-11T09:00:00Z");

    private final CellId id = CellId.next();
    private final PersonId technician = PersonId.next();
    private final PersonId operator = PersonId.next();
    private Set<PersonId> involved = Set.of();
    private List<ToolReading> readings =
            List.of(reading(PersonId.next(), "G-02", -60), reading(PersonId.next(), "G-02", -60));

    @Test
    void aCellInServiceWithAPassedDayTestHasNoObstacle() {
        assertThat(CellGates.obstacles(
                        cell(CellState.IN_SERVICE), version("G-02"), Optional.of(test("g-02 ", TAGGED)), List.of()))
                .isEmpty();
    }

    @Test
    void aRestrictedCellRuns() {
        assertThat(CellGates.obstacles(
                        cell(CellState.RESTRICTED), version("G-02"), Optional.of(test("G-02", TAGGED)), List.of()))
                .isEmpty();
    }

    @Test
    void namesEveryObstacleAndWhoMendsIt() {
        var obstacles = CellGates.obstacles(cell(CellState.HELD), version("G-02"), Optional.empty(), List.of());

        assertThat(obstacles)
                .extracting(Cells.Obstacle::code)
                .containsExactly("cell-not-in-service", "day-test-missing");
        assertThat(obstacles).allSatisfy(obstacle -> assertThat(obstacle.mend()).contains("technician"));
        assertThat(obstacles.get(0).says()).isEqualTo("Avocet is held: cable chafe");
    }

    @Test
    void aDayTestThatDidNotPassIsAnObstacle() {
        DayTest failed = test("G-02", TAGGED, "The arm moved again when the e-stop was unlatched.");

        assertThat(CellGates.obstacles(cell(CellState.IN_SERVICE), version("G-02"), Optional.of(failed), List.of()))
                .singleElement()
                .satisfies(obstacle -> {
                    assertThat(obstacle.code()).isEqualTo("day-test-failed");
                    assertThat(obstacle.says()).contains("moved again");
                });
    }

    @Test
    void aDayTestWithAnotherToolNoLongerCounts() {
        assertThat(CellGates.obstacles(
                        cell(CellState.IN_SERVICE), version("V-01"), Optional.of(test("G-02", TAGGED)), List.of()))
                .extracting(Cells.Obstacle::code)
                .containsExactly("day-test-other-tool");
    }

    @Test
    void aStopWithoutItsCauseIsAnObstacle() {
        CellStop press = new CellStop(UUID.randomUUID(), id, false, operator, TAGGED, null);
        CellStop arm = new CellStop(UUID.randomUUID(), id, true, operator, TAGGED, null);
        var passed = Optional.of(test("G-02", TAGGED));

        assertThat(CellGates.obstacles(cell(CellState.IN_SERVICE), version("G-02"), passed, List.of(press)))
                .singleElement()
                .satisfies(obstacle -> {
                    assertThat(obstacle.code()).isEqualTo("stop-not-reset");
                    assertThat(obstacle.says()).startsWith("The e-stop of Avocet was pressed");
                });
        assertThat(CellGates.obstacles(cell(CellState.IN_SERVICE), version("G-02"), passed, List.of(press, arm)))
                .singleElement()
                .satisfies(obstacle -> assertThat(obstacle.says()).startsWith("The arm of Avocet stopped itself"));
    }

    @Test
    void aStoppedCellReturnsAfterAPassedTestSinceTheTag() {
        Cell cell = cell(CellState.OUT_OF_SERVICE);
        List<CellTag> tags = List.of(tag(null));

        assertThat(refusal(cell, tags, Optional.empty(), technician))
                .hasValueSatisfying(says -> assertThat(says).contains("No day test has passed"));
        assertThat(refusal(cell, tags, Optional.of(test("G-02", TAGGED.plusSeconds(1), "No.")), technician))
                .isPresent();
        assertThat(refusal(cell, tags, Optional.of(test("G-02", TAGGED.plusSeconds(1))), technician))
                .isEmpty();
    }

    @Test
    void thePersonWhoseRunCausedTheTagDoesNotReturnTheCell() {
        var passed = Optional.of(test("G-02", TAGGED.plusSeconds(1)));

        assertThat(refusal(cell(CellState.HELD), List.of(tag(operator)), passed, operator))
                .hasValueSatisfying(says -> assertThat(says).contains("Your own run"));
        assertThat(refusal(cell(CellState.HELD), List.of(tag(operator)), passed, technician))
                .isEmpty();
    }

    @Test
    void thereIsNothingToReturnOnACellThatRuns() {
        assertThat(refusal(cell(CellState.IN_SERVICE), List.of(), Optional.empty(), technician))
                .hasValueSatisfying(says -> assertThat(says).contains("no tag"));
    }

    @Test
    void nobodyWithAPartInTheRunReturnsTheCell() {
        involved = Set.of(technician);
        assertThat(refusal(cell(CellState.HELD), List.of(tag(null)), Optional.of(test("G-02", TAGGED)), technician))
                .hasValueSatisfying(says -> assertThat(says).startsWith("You had a part in the run"));
    }

    @Test
    void twoPeopleReadTheSameAndWhatTheVersionSays() {
        Optional<DayTest> passed = Optional.of(test("G-02", TAGGED));
        List<CellTag> tags = List.of(tag(null));
        readings = List.of(reading(operator, "G-02", -60));
        assertThat(refusal(cell(CellState.HELD), tags, passed, technician))
                .hasValueSatisfying(says -> assertThat(says).endsWith("read so far: 1."));
        readings = List.of(reading(operator, "G-02", -60), reading(technician, "G-02", -60.1));
        assertThat(refusal(cell(CellState.HELD), tags, passed, technician))
                .hasValueSatisfying(
                        says -> assertThat(says).contains("do not agree").doesNotContain("60"));
        readings = List.of(reading(operator, "V-01", -60), reading(technician, "V-01", -60));
        assertThat(refusal(cell(CellState.HELD), tags, passed, technician)).isPresent();
        readings = List.of(reading(operator, "g-02", -60), reading(technician, "G-02", -60));
        assertThat(refusal(cell(CellState.HELD), tags, passed, technician)).isEmpty();
    }

    private Optional<String> refusal(Cell cell, List<CellTag> tags, Optional<DayTest> latest, PersonId by) {
        CellFacts inForce = new CellFacts("Avocet", 7, "G-02", List.of(0.0, 0.0, -60.0), "reduced", 50, List.of());
        return CellGates.refusal(new CellGates.ReturnQuestion(cell, tags, latest, readings, inForce, involved, by));
    }

    private ToolReading reading(PersonId by, String tool, double z) {
        return new ToolReading(id, by, TAGGED, tool, List.of(0.0, 0.0, z));
    }

    private Cell cell(CellState state) {
        String reason = state == CellState.IN_SERVICE ? "" : "cable chafe";
        return new Cell(id, LabId.next(), "Avocet", state, reason, 7, 0);
    }

    private CellVersion version(String tool) {
        return new CellVersion(id, 7, "", "", tool, technician, operator, TAGGED, "first");
    }

    private CellTag tag(@Nullable PersonId causedBy) {
        return new CellTag(UUID.randomUUID(), id, CellTag.Kind.HOLD, "cable chafe", technician, TAGGED, causedBy, null);
    }

    private DayTest test(String tool, Instant at, String... failures) {
        return new DayTest(
                UUID.randomUUID(),
                id,
                7,
                LocalDate.of(2026, 3, 11),
                technician,
                at,
                List.of(failures),
                new DayTestReadings("by the door", true, false, true, "reduced", "3", 50, tool, true));
    }
}
