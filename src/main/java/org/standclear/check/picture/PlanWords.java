package org.standclear.check.picture;

import org.standclear.check.picture.View.Axes;
import org.standclear.core.cell.CellDescription;
import org.standclear.core.cell.KeepOut;
import org.standclear.core.check.CheckAnswer;
import org.standclear.core.geometry.Box;
import org.standclear.core.geometry.Vector;
import org.standclear.core.quantity.Interval;
import org.standclear.core.quantity.ShownNumber;
import org.standclear.core.timeline.Moment;

/** The views in words, for those who cannot see them. */
final class PlanWords {

    private PlanWords() {}

    static String of(CheckAnswer answer, Samples samples) {
        CellDescription cell = answer.program().cell();
        StringBuilder says = new StringBuilder(way(Axes.X_AND_Y, samples));
        Box space = cell.limits().space();
        if (space != null) {
            says.append(" The space is x ")
                    .append(range(space.x()))
                    .append(", y ")
                    .append(range(space.y()));
            says.append(" mm.");
        }
        for (KeepOut keepOut : cell.limits().keepOut()) {
            Box box = keepOut.box();
            says.append(" Keep-out ").append(keepOut.name()).append(": x ").append(range(box.x()));
            says.append(", y ").append(range(box.y())).append(" mm.");
        }
        cell.arm()
                .ring()
                .ifPresent(ring -> says.append(" The flange reaches from ")
                        .append(ShownNumber.up(ring.min(), 0))
                        .append(" to ")
                        .append(ShownNumber.down(ring.max(), 0))
                        .append(" mm around axis 1."));
        return says.toString();
    }

    static String side(Axes axes, Samples samples) {
        return way(axes, samples);
    }

    private static String way(Axes axes, Samples samples) {
        double[] ends = {Double.MAX_VALUE, -Double.MAX_VALUE, Double.MAX_VALUE, -Double.MAX_VALUE};
        int moves = 0;
        for (Samples.OfSpan span : samples.spans()) {
            moves += span.hasWay() ? 1 : 0;
            for (Moment moment : span.moments()) {
                Vector tool = moment.tool();
                if (tool != null) {
                    ends[0] = Math.min(ends[0], axes.across(tool));
                    ends[1] = Math.max(ends[1], axes.across(tool));
                    ends[2] = Math.min(ends[2], axes.up(tool));
                    ends[3] = Math.max(ends[3], axes.up(tool));
                }
            }
        }
        if (ends[0] > ends[1]) {
            return "There is no way to draw.";
        }
        return (moves == 1 ? "The way of one move" : "The ways of " + moves + " moves") + ": "
                + axes.acrossName() + " from " + near(ends[0]) + " to " + near(ends[1]) + ", "
                + axes.upName() + " from " + near(ends[2]) + " to " + near(ends[3]) + " mm.";
    }

    private static String range(Interval interval) {
        return ShownNumber.plain(interval.min()) + " to " + ShownNumber.plain(interval.max());
    }

    private static String near(double mm) {
        return PathText.number(mm);
    }
}
