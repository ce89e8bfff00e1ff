package org.standclear.core.allocation;

import java.time.Duration;
import java.time.Instant;

/** From an instant until another, which is not part of it. */
public record Span(Instant from, Instant until) {

    public Span {
        if (!from.isBefore(until)) {
            throw new IllegalArgumentException("a span ends after it starts: " + from + " to " + until);
        }
    }

    /** That many minutes from an instant on. */
    public static Span minutes(Instant from, long minutes) {
        return new Span(from, from.plus(Duration.ofMinutes(minutes)));
    }

    /** Whether they have an instant in common; touching is not overlapping. */
    public boolean overlaps(Span other) {
        return from.isBefore(other.until) && other.from.isBefore(until);
    }

    /** Whether all of the other lies within. */
    public boolean holds(Span other) {
        return !other.from.isBefore(from) && !other.until.isAfter(until);
    }
}
