package org.standclear.signoff.rules;

import java.time.Instant;
import java.util.List;
import org.jspecify.annotations.Nullable;
import org.standclear.booking.Booking;
import org.standclear.cell.Cell;
import org.standclear.check.StoredAnswer;
import org.standclear.people.Person;
import org.standclear.signoff.Obstacle;
import org.standclear.signoff.Waiver;

/**
 * The facts that the gates of a release are asked about, read under locks.
 *
 * @param slotOver why the slot has no time left for a release, in words; null while it has
 * @param cellObstacles what the cell itself says stands in the way
 * @param attendant null while the booking needs one
 * @param otherStop where the attendant stands at another e-stop now; null when nowhere
 * @param otherRun where the operator runs another cell now; null when nowhere
 * @param staffOnDuty technicians and instructors on duty now
 * @param notClosedOut runs on the cell that wait for their close-out, in words
 * @param waiver what lets a program run that is not within limits; null when nothing does
 * @param answer of the check on the cell's current version; null when there is none
 * @param answerInForce whether the answer stands on the limits and rules of now
 */
public record GateQuestion(
        Booking booking,
        Cell cell,
        Instant now,
        @Nullable String slotOver,
        List<Obstacle> cellObstacles,
        Person operator,
        boolean operatorAuthorised,
        @Nullable Person attendant,
        boolean attendantAuthorised,
        @Nullable String otherStop,
        @Nullable String otherRun,
        List<Person> staffOnDuty,
        List<NotClosedOut> notClosedOut,
        @Nullable StoredAnswer answer,
        boolean answerInForce,
        String answerSays,
        @Nullable Waiver waiver) {

    public GateQuestion {
        cellObstacles = List.copyOf(cellObstacles);
        staffOnDuty = List.copyOf(staffOnDuty);
        notClosedOut = List.copyOf(notClosedOut);
    }

    /** A run before this one that nobody closed out. */
    public record NotClosedOut(String operatorName, String slot) {}
}
