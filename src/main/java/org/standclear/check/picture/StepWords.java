package org.standclear.check.picture;

import org.jspecify.annotations.Nullable;
import org.standclear.core.motion.Peaks;
import org.standclear.core.program.Point;
import org.standclear.core.quantity.ShownNumber;
import org.standclear.core.timeline.Span;

/** One step in words. */
final class StepWords {

    private StepWords() {}

    /** What it does and how fast: "step 3: straight to tray, at most 125 mm/s". */
    static String of(Span span) {
        return "step " + span.name() + ": " + act(span) + speed(span);
    }

    private static String act(Span span) {
        Point target = span.step().target();
        return switch (span.step().kind()) {
            case JOINT -> "joint move" + to(target);
            case STRAIGHT -> "straight move" + to(target);
            case ARC -> "arc" + to(target);
            case WAIT -> "wait";
            case DO -> "action";
        };
    }

    private static String to(@Nullable Point target) {
        return target == null ? "" : " to " + target.name();
    }

    private static String speed(Span span) {
        Peaks peaks = span.step().peaks();
        if (peaks == null) {
            return ", speed not known";
        }
        return span.step().isMove() ? ", at most " + ShownNumber.up(peaks.heldTool(), 1) + " mm/s" : "";
    }
}
