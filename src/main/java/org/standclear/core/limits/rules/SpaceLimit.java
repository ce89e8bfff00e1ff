package org.standclear.core.limits.rules;

import static org.standclear.core.quantity.ShownNumber.plain;
import static org.standclear.core.quantity.ShownNumber.up;

import java.util.ArrayList;
import java.util.List;
import java.util.stream.Stream;
import org.jspecify.annotations.Nullable;
import org.standclear.core.geometry.Box;
import org.standclear.core.geometry.Vector;
import org.standclear.core.limits.Check;
import org.standclear.core.limits.CheckedProgram;
import org.standclear.core.limits.Details;
import org.standclear.core.limits.Finding;
import org.standclear.core.limits.LimitRule;
import org.standclear.core.limits.LimitSource;
import org.standclear.core.limits.PathSearch;
import org.standclear.core.motion.StepMotion;
import org.standclear.core.program.Point;
import org.standclear.core.quantity.Interval;
import org.standclear.core.quantity.Tolerance;

/** The way of the tool point, from the start to the closing move, stays inside the space of the cell. */
final class SpaceLimit implements LimitRule {

    private record Leaving(Vector place, double excess, int step, int line, String where) {}

    @Override
    public Stream<Finding> findings(CheckedProgram program) {
        Box space = program.cell().limits().space();
        if (space == null) {
            return Stream.of(new Finding.Notice(Details.of(Check.SPACE, "No limit set for the space.")));
        }
        List<Leaving> leavings = leavings(program, space);
        if (!leavings.isEmpty()) {
            Leaving first = leavings.get(0);
            List<Integer> others = leavings.stream()
                    .map(Leaving::step)
                    .filter(step -> step != first.step())
                    .toList();
            return Stream.of(new Finding.Outside(outside(first, space, others)));
        }
        if (!program.figures().waysComplete()) {
            return Stream.of(Finding.notCheckable(Details.of(Check.SPACE, Places.MISSING_WAYS)));
        }
        return Stream.of(new Finding.Within(
                Details.of(Check.SPACE, "The way of the tool point stays inside the space of the cell.")));
    }

    private static List<Leaving> leavings(CheckedProgram program, Box space) {
        List<Leaving> leavings = new ArrayList<>();
        Point start = program.motion().start();
        if (start != null) {
            addIfOutside(leavings, leaving(start.pose().place(), space, 0, start.line(), "The start"));
        }
        for (StepMotion step : program.motion().steps()) {
            if (step.isMove()) {
                addIfOutside(leavings, worst(step, space));
            }
        }
        return leavings;
    }

    private static void addIfOutside(List<Leaving> leavings, @Nullable Leaving leaving) {
        if (leaving != null && Tolerance.isOutside(leaving.excess())) {
            leavings.add(leaving);
        }
    }

    private static @Nullable Leaving worst(StepMotion step, Box space) {
        String where = step.closing() ? "The move that closes the loop" : "Step " + step.step();
        if (step.trace() != null) {
            Vector place =
                    new PathSearch(step.trace().path()).greatest(space::excess).place();
            return leaving(place, space, step.step(), step.line(), where);
        }
        return step.target() == null
                ? null
                : leaving(step.target().pose().place(), space, step.step(), step.line(), where);
    }

    private static Leaving leaving(Vector place, Box space, int step, int line, String where) {
        return new Leaving(place, space.excess(place), step, line, where);
    }

    private static Details outside(Leaving leaving, Box space, List<Integer> others) {
        Vector at = leaving.place();
        char axis = worstAxis(space, at);
        Interval side = axis == 'x' ? space.x() : axis == 'y' ? space.y() : space.z();
        double value = axis == 'x' ? at.x() : axis == 'y' ? at.y() : at.z();
        double bound = value > side.max() ? side.max() : side.min();
        String says = leaving.where() + " takes the tool point " + up(leaving.excess(), 1) + " mm beyond " + axis + " "
                + plain(bound) + ", the end of the space, near " + Places.near(at)
                + ". Move the point, or go another way.";
        return Details.of(Check.SPACE, says + Places.others(others))
                .comparing(value, bound, "mm")
                .from(LimitSource.CELL)
                .atStep(leaving.step(), leaving.line());
    }

    private static char worstAxis(Box space, Vector at) {
        double x = space.x().outside(at.x());
        double y = space.y().outside(at.y());
        double z = space.z().outside(at.z());
        if (x >= y && x >= z) {
            return 'x';
        }
        return y >= z ? 'y' : 'z';
    }
}
