package org.standclear.check.picture;

import java.util.List;
import org.jspecify.annotations.Nullable;
import org.standclear.check.picture.Samples.OfSpan;
import org.standclear.core.arm.Axis;
import org.standclear.core.arm.AxisValues;
import org.standclear.core.timeline.Moment;

/** How much of its own speed an axis uses, in percent. */
final class AxisShare {

    private AxisShare() {}

    /** At a rate per second; infinite where the rate is no number, null when the cell gives no speed of the axis. */
    static @Nullable Double percent(Axis axis, double rate) {
        Double own = axis.speed();
        if (own == null) {
            return null;
        }
        return Double.isFinite(rate)
                ? Double.valueOf(Math.abs(rate) / own * 100)
                : Double.valueOf(Double.POSITIVE_INFINITY);
    }

    /** The greatest over the moments of some steps; null when the cell gives no speed of the axis. */
    static @Nullable Double greatest(Axis axis, int number, List<OfSpan> spans) {
        double most = 0;
        for (OfSpan span : spans) {
            for (Moment moment : span.moments()) {
                AxisValues rates = moment.rates();
                Double part = percent(axis, rates == null ? 0 : rates.get(number));
                if (part == null) {
                    return null;
                }
                most = Math.max(most, part);
            }
        }
        return most;
    }
}
