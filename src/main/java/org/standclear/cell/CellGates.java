package org.standclear.cell;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.Set;
import org.standclear.cell.Cells.Obstacle;
import org.standclear.platform.ids.PersonId;

/** What stands in the way of a release on a cell, and of putting a stopped cell back. */
final class CellGates {

    private static final String STAFF = "A technician or an instructor";

    private CellGates() {}

    /** The obstacles, given the day's latest test and the stops that wait for their reset. */
    static List<Obstacle> obstacles(Cell cell, CellVersion inForce, Optional<DayTest> today, List<CellStop> notReset) {
        List<Obstacle> found = new ArrayList<>();
        if (!cell.state().mayRun()) {
            found.add(new Obstacle(
                    "cell-not-in-service",
                    cell.name() + " is " + cell.state().words() + ": " + cell.stateReason(),
                    STAFF + " puts it back after a day test that passes."));
        }
        if (!notReset.isEmpty()) {
            String what = notReset.stream().anyMatch(CellStop::armStoppedItself)
                    ? "The arm of " + cell.name() + " stopped itself"
                    : "The e-stop of " + cell.name() + " was pressed";
            found.add(new Obstacle(
                    "stop-not-reset",
                    what + "; the cause is not on record yet.",
                    STAFF + " records the reset on the bench screen when the cause is known."));
        }
        dayTest(cell, inForce, today).ifPresent(found::add);
        return List.copyOf(found);
    }

    private static Optional<Obstacle> dayTest(Cell cell, CellVersion inForce, Optional<DayTest> today) {
        String mend = STAFF + " does the day test on the page of " + cell.name() + ".";
        if (today.isEmpty()) {
            return Optional.of(new Obstacle("day-test-missing", cell.name() + " has had no day test today.", mend));
        }
        DayTest test = today.get();
        if (!test.passed()) {
            return Optional.of(new Obstacle(
                    "day-test-failed", "The day test on " + cell.name() + " did not pass: " + words(test), mend));
        }
        if (!sameCode(test.readings().toolCode(), inForce.fittedTool())) {
            return Optional.of(new Obstacle(
                    "day-test-other-tool",
                    "The day test on " + cell.name() + " was made with "
                            + test.readings().toolCode() + "; version " + inForce.number() + " has "
                            + inForce.fittedTool() + ".",
                    mend));
        }
        return Optional.empty();
    }

    /** A test that passed counts for the limits that it was made under, and for no others. */
    static Obstacle testedUnderOtherLimits(Cell cell, DayTest test) {
        return new Obstacle(
                "day-test-other-limits",
                "The day test on " + cell.name() + " was made under version " + test.cellVersion()
                        + "; the limits changed since.",
                STAFF + " does the day test again on the page of " + cell.name() + ".");
    }

    /** An inspection or a review that is late. */
    static Obstacle overdue(Cell cell, DutyDue late, String dueOn) {
        String done = late.lastDone() == null ? "never recorded" : "due on " + dueOn;
        return new Obstacle(
                late.duty() == RecurringDuty.INSPECTION ? "inspection-overdue" : "risk-assessment-overdue",
                "The " + late.duty().words() + " of " + cell.name() + " is overdue: " + done + ".",
                late.duty().mend() + "; staff record it on the page of " + cell.name() + ".");
    }

    static boolean sameTool(DayTest test, CellVersion inForce) {
        return sameCode(test.readings().toolCode(), inForce.fittedTool());
    }

    /**
     * The facts about a return to service.
     *
     * @param latest the latest day test recorded since the last tag was hung; none when there is none since
     * @param readings of tool and offset kept since the last tag was hung, one of each person who may read
     * @param involved who had a part in a run that was going on when a tag was hung
     */
    record ReturnQuestion(
            Cell cell,
            List<CellTag> stopping,
            Optional<DayTest> latest,
            List<ToolReading> readings,
            CellFacts inForce,
            Set<PersonId> involved,
            PersonId by) {}

    /** Why the person may not put the cell back now, if so. */
    static Optional<String> refusal(ReturnQuestion question) {
        Cell cell = question.cell();
        if (cell.state().mayRun()) {
            return Optional.of(cell.name() + " is " + cell.state().words() + "; there is no tag to take off.");
        }
        if (question.stopping().stream().anyMatch(tag -> question.by().equals(tag.causedBy()))) {
            return Optional.of("Your own run led to a tag on " + cell.name() + ". " + STAFF
                    + " who was not involved puts it back.");
        }
        if (question.involved().contains(question.by())) {
            return Optional.of("You had a part in the run during which " + cell.name() + " was stopped. " + STAFF
                    + " who was not involved puts it back.");
        }
        return question.latest().filter(DayTest::passed).isPresent()
                ? unread(question)
                : Optional.of("No day test has passed on " + cell.name()
                        + " since the tag was hung. Do the day test first, then put the cell back.");
    }

    /** Two people have to read the same, and what the version in force says; no value is given away. */
    private static Optional<String> unread(ReturnQuestion question) {
        List<ToolReading> readings = question.readings();
        if (readings.size() < 2) {
            return Optional.of("Two people read tool and offset at the robot, each for themselves; read so far: "
                    + readings.size() + ".");
        }
        return readings.stream().allMatch(reading -> reading.agreesWith(question.inForce()))
                ? Optional.empty()
                : Optional.of("The readings of tool and offset do not agree with each other and with version "
                        + question.cell().currentVersion() + ". All who read it read it again.");
    }

    /** Whether two tool codes are the same but for case and space around them. */
    static boolean sameCode(String one, String other) {
        return one.strip().toUpperCase(Locale.ROOT).equals(other.strip().toUpperCase(Locale.ROOT));
    }

    private static String words(DayTest test) {
        return String.join(" ", test.failures());
    }
}
