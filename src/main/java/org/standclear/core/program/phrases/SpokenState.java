package org.standclear.core.program.phrases;

import org.jspecify.annotations.Nullable;

/**
 * What stays in force from one line to the next.
 *
 * @param straightMmS null until the program says a speed
 */
record SpokenState(double axisPercent, @Nullable Double straightMmS, double accelerationPercent) {

    /** Full speed of the axes and full acceleration until something else is said. */
    static final SpokenState INITIAL = new SpokenState(100, null, 100);

    SpokenState withAxisPercent(double percent) {
        return new SpokenState(percent, straightMmS, accelerationPercent);
    }

    SpokenState withStraight(double speed) {
        return new SpokenState(axisPercent, speed, accelerationPercent);
    }

    SpokenState withAcceleration(double percent) {
        return new SpokenState(axisPercent, straightMmS, percent);
    }
}
