package org.standclear.trail;

import java.time.Instant;
import org.jspecify.annotations.Nullable;
import org.standclear.platform.ids.LabId;
import org.standclear.platform.ids.PersonId;

/**
 * Which entries to show; null or empty means any.
 *
 * @param kindPrefix a feature ({@code booking.}) or a whole kind ({@code booking.made})
 * @param person who did it, or to whom it happened, or who is named in the facts
 * @param about the id of a thing (a cell, a booking) that is the subject or is named in the facts
 * @param from first instant
 * @param until the instant after the last
 */
public record TrailFilter(
        LabId lab,
        String kindPrefix,
        @Nullable PersonId person,
        String about,
        @Nullable Instant from,
        @Nullable Instant until) {

    /** All entries of a lab. */
    public static TrailFilter all(LabId lab) {
        return new TrailFilter(lab, "", null, "", null, null);
    }
}
