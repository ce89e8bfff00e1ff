package org.standclear.core.check;

import org.jspecify.annotations.Nullable;
import org.standclear.core.arm.Arm;
import org.standclear.core.arm.Posture;
import org.standclear.core.arm.articulated.ArticulatedArm;
import org.standclear.core.program.MotionPlan;
import org.standclear.core.program.Point;
import org.standclear.core.program.ProgramReader;
import org.standclear.core.program.Step;
import org.standclear.core.text.BadInputException;
import org.standclear.core.text.Words;

/** Points have what the arm of the cell needs and nothing that it has not. */
final class PointsFit {

    private PointsFit() {}

    static void require(Arm arm, ProgramReader reader, MotionPlan plan, @Nullable Point start) {
        if (start != null) {
            require(arm, reader, start);
        }
        for (Step step : plan.steps()) {
            if (step instanceof Step.Moving moving) {
                require(arm, reader, moving.target());
            }
        }
    }

    private static void require(Arm arm, ProgramReader reader, Point point) {
        boolean fits = point.axes() == null
                ? arm.takes(point.branch())
                        && (arm instanceof ArticulatedArm || point.pose().isUpright())
                : arm instanceof ArticulatedArm;
        if (!fits) {
            throw new BadInputException(
                    point.line(), "the point " + Words.quoted(point.name()) + " " + needs(arm, reader, point));
        }
    }

    private static String needs(Arm arm, ProgramReader reader, Point point) {
        if (point.axes() != null || point.branch() instanceof Posture && !(arm instanceof ArticulatedArm)) {
            return "is one of a six-axis arm; this cell's arm is a " + arm.kind() + ", write x, y, z and yaw";
        }
        return reader.needs(arm);
    }
}
