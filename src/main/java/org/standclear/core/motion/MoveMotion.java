package org.standclear.core.motion;

import org.jspecify.annotations.Nullable;
import org.standclear.core.motion.StepMotion.Trace;

/** Times, speeds and way of one move; null where they cannot be computed. */
record MoveMotion(
        @Nullable Double durationS,
        @Nullable Double fullPowerDurationS,
        @Nullable Peaks peaks,
        @Nullable Trace trace) {

    /** Nothing is known of it. */
    static final MoveMotion UNKNOWN = new MoveMotion(null, null, null, null);

    /** Only the way is known. */
    static MoveMotion along(ToolPath path) {
        return new MoveMotion(null, null, null, new Trace(path, null, null));
    }

    /** The arm is there already. */
    static MoveMotion still(ToolPath path) {
        return new MoveMotion(0.0, 0.0, Peaks.STILL, new Trace(path, null, null));
    }

    /** All is known, if the numbers are of a size that can be told. */
    static MoveMotion of(ToolPath path, Profile held, Profile full, Peaks peaks) {
        if (!peaks.isFinite() || !Double.isFinite(held.duration()) || !Double.isFinite(full.duration())) {
            return along(path);
        }
        return new MoveMotion(held.duration(), full.duration(), peaks, new Trace(path, held, full));
    }
}
