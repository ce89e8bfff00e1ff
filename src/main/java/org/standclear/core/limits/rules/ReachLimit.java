package org.standclear.core.limits.rules;

import static org.standclear.core.quantity.ShownNumber.down;
import static org.standclear.core.quantity.ShownNumber.up;

import java.util.List;
import java.util.stream.Stream;
import org.standclear.core.limits.Check;
import org.standclear.core.limits.CheckedProgram;
import org.standclear.core.limits.Details;
import org.standclear.core.limits.Finding;
import org.standclear.core.limits.LimitRule;
import org.standclear.core.motion.MotionFault;

/** Every point, and every place of a straight move, can be reached on the named side of the elbow (geometry). */
final class ReachLimit implements LimitRule {

    @Override
    public Stream<Finding> findings(CheckedProgram program) {
        List<MotionFault> faults = program.motion().faults().stream()
                .filter(fault -> !(fault instanceof MotionFault.OutOfRange))
                .toList();
        if (faults.isEmpty()) {
            return Stream.of(
                    new Finding.Within(Details.of(Check.REACH, "Every point and every straight move is in reach.")));
        }
        MotionFault first = faults.get(0);
        List<Integer> others = faults.stream()
                .skip(1)
                .map(MotionFault::step)
                .filter(step -> step != first.step())
                .toList();
        String says = says(first) + Places.others(others);
        return Stream.of(new Finding.Outside(Details.of(Check.REACH, says).atStep(first.step(), first.line())));
    }

    private static String says(MotionFault fault) {
        if (fault instanceof MotionFault.OutOfReach out) {
            boolean far = out.radius() > out.farthest();
            return Places.point(out.step(), out.point()) + " is too " + (far ? "far from" : "near to")
                    + " axis 1: the flange would be at " + (far ? up(out.radius(), 1) : down(out.radius(), 1))
                    + " mm, it gets from " + up(out.nearest(), 1) + " to " + down(out.farthest(), 1)
                    + " mm. Move the point.";
        }
        if (fault instanceof MotionFault.LeavesReach leaves) {
            return "The straight move of step " + leaves.step() + " leaves the reach of the arm near "
                    + Places.near(leaves.where()) + ". Go round it, or make it a joint move.";
        }
        if (fault instanceof MotionFault.NotRound round) {
            return "The arc of step " + round.step()
                    + " cannot be gone: its ends are not equally far from its centre, by "
                    + up(round.mismatch(), 3) + " mm. A loop comes back to its first step as that is written;"
                    + " begin with a joint move or a straight move.";
        }
        if (fault instanceof MotionFault.Unsolved unsolved) {
            return Places.point(unsolved.step(), unsolved.point()) + " " + unsolved.why() + ". Move the point.";
        }
        MotionFault.OtherSide side = (MotionFault.OtherSide) fault;
        return "The straight move of step " + side.step() + " begins with "
                + side.from().words()
                + " and its point is named " + side.named().word()
                + "; a straight move keeps its side. Name the same side, or make it a joint move.";
    }
}
