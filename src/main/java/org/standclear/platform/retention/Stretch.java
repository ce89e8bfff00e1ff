package org.standclear.platform.retention;

import java.time.Instant;
import java.util.UUID;
import org.jspecify.annotations.Nullable;

/**
 * Which records of a kind are asked for, those whose clocks started earliest first.
 *
 * @param before clocks that started before then
 * @param after only records that come after this one; null from the beginning
 * @param atMost how many
 */
public record Stretch(Instant before, @Nullable Position after, int atMost) {

    /** A record's place in the order. */
    public record Position(Instant clockStart, UUID id) {

        /** Where a candidate stands. */
        public static Position of(Candidate candidate) {
            return new Position(candidate.clockStart(), candidate.id());
        }
    }

    /** From the beginning. */
    public static Stretch first(Instant before, int atMost) {
        return new Stretch(before, null, atMost);
    }
}
