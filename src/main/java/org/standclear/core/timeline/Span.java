package org.standclear.core.timeline;

import org.jspecify.annotations.Nullable;
import org.standclear.core.motion.Profile;
import org.standclear.core.motion.StepMotion;

/**
 * The stretch of time that one step takes. A step whose speeds are not known takes none here, and says so.
 *
 * @param index its place among the spans, counted from 0
 * @param from s since the program began
 * @param until s since the program began, not before {@code from}
 * @param profile of a move that takes time; null when it stands or its speeds are not known
 */
public record Span(
        int index,
        StepMotion step,
        double from,
        double until,
        @Nullable Profile profile) {

    public Span {
        if (!(from <= until) || !Double.isFinite(until)) {
            throw new IllegalArgumentException("a span needs finite times in their order");
        }
    }

    /** How long it takes, s. */
    public double seconds() {
        return until - from;
    }

    /** Whether its speeds are missing. */
    public boolean isUnknown() {
        return step.peaks() == null;
    }

    /** What tells the step from the others: its number, or that of the first with {@code -closing}. */
    public String key() {
        return step.step() + (step.closing() ? "-closing" : "");
    }

    /** What people call it: its number, or that of the first and "closing". */
    public String name() {
        return step.step() + (step.closing() ? ", closing" : "");
    }
}
