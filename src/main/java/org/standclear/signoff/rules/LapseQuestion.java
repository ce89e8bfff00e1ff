package org.standclear.signoff.rules;

import java.time.Instant;
import org.jspecify.annotations.Nullable;
import org.standclear.booking.Booking;
import org.standclear.cell.Cell;
import org.standclear.program.Revision;
import org.standclear.signoff.Release;

/**
 * The facts beside which a release is held.
 *
 * @param attached the revision on the booking now; null when none is
 * @param newer the latest revision of the released program, when it came after the release
 * @param answerInForce whether the answer that the release rests on stands on the limits and rules of now
 * @param turnOver why the attendant's turn is over; null while it is not
 * @param testedSince whether a day test was made after the release
 * @param ended whose authorisation ended, in words; null when both hold
 */
public record LapseQuestion(
        Release release,
        Booking booking,
        Cell cell,
        @Nullable Revision attached,
        @Nullable Revision newer,
        boolean answerInForce,
        boolean attendantIsStaff,
        @Nullable String ended,
        boolean releaserOnDuty,
        String releaserName,
        @Nullable String attendantName,
        @Nullable String turnOver,
        boolean testedSince,
        Instant now) {}
