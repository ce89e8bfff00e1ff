package org.standclear.core.allocation;

import java.time.Duration;
import java.time.Instant;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;

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

    /** The same time in as few spans as can be, in order: who can come until eleven and from eleven on can come across eleven. */
    public static List<Span> joined(List<Span> spans) {
        List<Span> whole = new ArrayList<>();
        spans.stream().sorted(Comparator.comparing(Span::from)).forEach(next -> {
            Span last = whole.isEmpty() ? null : whole.get(whole.size() - 1);
            if (last == null || next.from.isAfter(last.until)) {
                whole.add(next);
            } else if (next.until.isAfter(last.until)) {
                whole.set(whole.size() - 1, new Span(last.from, next.until));
            }
        });
        return List.copyOf(whole);
    }
}
