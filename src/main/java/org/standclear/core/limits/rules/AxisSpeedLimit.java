package org.standclear.core.limits.rules;

import static org.standclear.core.quantity.ShownNumber.plain;
import static org.standclear.core.quantity.ShownNumber.up;

import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import java.util.stream.Stream;
import org.standclear.core.arm.Arm;
import org.standclear.core.arm.Axis;
import org.standclear.core.limits.Check;
import org.standclear.core.limits.CheckedProgram;
import org.standclear.core.limits.Details;
import org.standclear.core.limits.Finding;
import org.standclear.core.limits.LimitRule;
import org.standclear.core.limits.LimitSource;
import org.standclear.core.motion.AxisUse;
import org.standclear.core.motion.StepKind;
import org.standclear.core.quantity.Tolerance;

/** No straight move asks an axis for more than its own speed, which no override reduces (geometry). */
final class AxisSpeedLimit implements LimitRule {

    @Override
    public Stream<Finding> findings(CheckedProgram program) {
        List<AxisUse> uses = program.motion().axisUses();
        Optional<AxisUse> most = uses.stream()
                .filter(use -> use.speed() != null && use.axis().speed() != null)
                .max(Comparator.comparingDouble(AxisSpeedLimit::part));
        if (most.isPresent() && isTooFast(most.get())) {
            return Stream.of(tooFast(program.cell().arm(), most.get(), uses));
        }
        Optional<AxisUse> unknown =
                uses.stream().filter(use -> use.axis().speed() == null).findFirst();
        if (unknown.isPresent()) {
            return Stream.of(Finding.notCheckable(missing(unknown.get().axis().name())
                    .atStep(unknown.get().step(), unknown.get().line())));
        }
        boolean isUnknown = program.motion().steps().stream()
                .anyMatch(
                        step -> (step.kind() == StepKind.STRAIGHT || step.kind() == StepKind.ARC) && step.isUnknown());
        if (isUnknown) {
            return Stream.of(Finding.notCheckable(Details.of(Check.AXIS_SPEED, Places.missingSpeeds(program))));
        }
        return Stream.of(new Finding.Within(
                Details.of(Check.AXIS_SPEED, "No straight move asks an axis for more than its own speed.")));
    }

    private static Details missing(String axis) {
        return Details.of(Check.AXIS_SPEED, Places.noSpeedOf(axis));
    }

    /** The part of its own speed that an axis is asked for. */
    private static double part(AxisUse use) {
        Double speed = use.speed();
        Double own = use.axis().speed();
        return speed == null || own == null ? 0 : speed / own;
    }

    private static boolean isTooFast(AxisUse use) {
        return !Tolerance.isWithin(part(use), 1);
    }

    private static Finding tooFast(Arm arm, AxisUse use, List<AxisUse> uses) {
        Axis axis = use.axis();
        List<Integer> others = uses.stream()
                .filter(AxisSpeedLimit::isTooFast)
                .map(AxisUse::step)
                .filter(step -> step != use.step())
                .toList();
        double speed = use.speed() == null ? Double.POSITIVE_INFINITY : use.speed();
        String unit = axis.unit() + "/s";
        String asked = Double.isFinite(speed) ? up(speed, 1) + " " + unit : "a jump";
        String says = "The straight move of step " + use.step() + " asks the " + axis.name() + " for " + asked + "; "
                + plain(axis.speed() == null ? 0 : axis.speed()) + " " + unit
                + " is its own speed. Go slower, or keep away from where the arm is stretched or folded"
                + (arm.linkEnds() > 1 ? ", the wrist is straight or above axis 1." : ".")
                + Places.others(others);
        return new Finding.Outside(Details.of(Check.AXIS_SPEED, says)
                .comparing(speed, axis.speed(), unit)
                .from(LimitSource.ARM)
                .atStep(use.step(), use.line()));
    }
}
