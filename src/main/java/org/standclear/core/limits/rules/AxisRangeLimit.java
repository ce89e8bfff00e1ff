package org.standclear.core.limits.rules;

import static org.standclear.core.quantity.ShownNumber.plain;

import java.math.BigDecimal;
import java.math.RoundingMode;
import java.util.List;
import java.util.stream.Stream;
import org.standclear.core.arm.Axis;
import org.standclear.core.limits.Check;
import org.standclear.core.limits.CheckedProgram;
import org.standclear.core.limits.Details;
import org.standclear.core.limits.Finding;
import org.standclear.core.limits.LimitRule;
import org.standclear.core.limits.LimitSource;
import org.standclear.core.motion.MotionFault;

/** No axis has to leave its range, at a point or on the way of a straight move (geometry). */
final class AxisRangeLimit implements LimitRule {

    @Override
    public Stream<Finding> findings(CheckedProgram program) {
        List<MotionFault.OutOfRange> faults = program.motion().faults().stream()
                .filter(MotionFault.OutOfRange.class::isInstance)
                .map(MotionFault.OutOfRange.class::cast)
                .toList();
        if (faults.isEmpty()) {
            return Stream.of(new Finding.Within(Details.of(Check.AXIS_RANGE, "Every axis stays inside its range.")));
        }
        MotionFault.OutOfRange first = faults.get(0);
        List<Integer> others = faults.stream()
                .skip(1)
                .map(MotionFault::step)
                .filter(step -> step != first.step())
                .toList();
        Axis axis = first.axis();
        double bound = first.value() > axis.range().max()
                ? axis.range().max()
                : axis.range().min();
        return Stream.of(new Finding.Outside(Details.of(Check.AXIS_RANGE, says(first) + Places.others(others))
                .comparing(first.value(), bound, axis.unit())
                .from(LimitSource.ARM)
                .atStep(first.step(), first.line())));
    }

    private static String says(MotionFault.OutOfRange fault) {
        Axis axis = fault.axis();
        String where = fault.onTheWay()
                ? "On the way of the straight move of step " + fault.step()
                : Places.point(fault.step(), fault.point());
        return where + (fault.onTheWay() ? " the " : " needs the ") + axis.name()
                + (fault.onTheWay() ? " would have to go to " : " at ") + away(fault.value(), axis) + " " + axis.unit()
                + "; it goes from " + plain(axis.range().min()) + " to "
                + plain(axis.range().max()) + " " + axis.unit()
                + ". Move the point, or come to it another way.";
    }

    /** Rounded away from the range. */
    private static String away(double value, Axis axis) {
        RoundingMode mode = value > axis.range().max() ? RoundingMode.CEILING : RoundingMode.FLOOR;
        return plain(BigDecimal.valueOf(value).setScale(2, mode).doubleValue());
    }
}
