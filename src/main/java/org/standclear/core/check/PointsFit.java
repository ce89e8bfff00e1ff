package org.standclear.core.check;

import org.jspecify.annotations.Nullable;
import org.standclear.core.arm.Arm;
import org.standclear.core.program.MotionPlan;
import org.standclear.core.program.Point;
import org.standclear.core.program.Step;
import org.standclear.core.text.BadInputException;
import org.standclear.core.text.Words;

/** Points have what the arm of the cell needs and nothing that it has not. */
final class PointsFit {

    private PointsFit() {}

    static void require(Arm arm, MotionPlan plan, @Nullable Point start) {
        if (start != null) {
            require(arm, start);
        }
        for (Step step : plan.steps()) {
            if (step instanceof Step.Moving moving) {
                require(arm, moving.target());
            }
        }
    }

    private static void require(Arm arm, Point point) {
        String name = "the point " + Words.quoted(point.name());
        if (arm.hasElbow() && point.elbow() == null) {
            throw new BadInputException(
                    point.line(), name + " names no side of the elbow; write elbow: left or elbow: right");
        }
        if (!arm.hasElbow() && point.elbow() != null) {
            throw new BadInputException(
                    point.line(), name + " names a side of the elbow; a " + arm.kind() + " has none, leave elbow out");
        }
    }
}
