package org.standclear.core.motion;

import org.standclear.core.arm.ToolArc;
import org.standclear.core.arm.ToolLine;
import org.standclear.core.arm.ToolPose;
import org.standclear.core.arm.ToolWay;
import org.standclear.core.geometry.Angles;
import org.standclear.core.geometry.Vector;
import org.standclear.core.program.Step;

/** The way of the tool point that a step means, from where the tool stands. */
final class ToolWays {

    /** Ends nearer to each other than this, seen from above, make an arc a whole circle, mm. */
    private static final double SAME_PLACE = 1e-6;

    private ToolWays() {}

    /** An arc for an arc, else a straight line; the tool turns the shorter way. */
    static ToolWay of(Step.Moving step, ToolPose from) {
        ToolPose target = step.target().pose();
        if (!(step instanceof Step.Arc arc)) {
            return ToolLine.between(from, target);
        }
        Step.Round round = arc.round();
        return new ToolArc(
                from,
                target.place(),
                round.centreX(),
                round.centreY(),
                sweep(round, from.place(), target.place()),
                Angles.wrapped(target.yaw() - from.yaw()));
    }

    /** How far an arc goes round, deg; above 0 counter-clockwise. Ends at the same place make it a whole circle. */
    private static double sweep(Step.Round round, Vector from, Vector to) {
        double sense = round.clockwise() ? -1 : 1;
        if (new Vector(to.x() - from.x(), to.y() - from.y(), 0).length() <= SAME_PLACE) {
            return 360 * sense;
        }
        double first = Math.atan2(from.y() - round.centreY(), from.x() - round.centreX());
        double last = Math.atan2(to.y() - round.centreY(), to.x() - round.centreX());
        double ahead = Math.toDegrees(last - first) * sense;
        return sense * (ahead - 360 * Math.floor(ahead / 360));
    }

    /** Whether its ends are equally far from its centre, but for rounding. */
    static boolean isRound(ToolArc arc) {
        return arc.mismatch() <= Step.Round.ROUNDING_MM;
    }
}
