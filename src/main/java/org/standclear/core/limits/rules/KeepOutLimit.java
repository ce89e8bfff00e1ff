package org.standclear.core.limits.rules;

import static org.standclear.core.quantity.ShownNumber.down;
import static org.standclear.core.quantity.ShownNumber.plain;

import java.util.ArrayList;
import java.util.List;
import java.util.stream.Stream;
import org.standclear.core.cell.KeepOut;
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
import org.standclear.core.quantity.Tolerance;
import org.standclear.core.text.Words;

/** The way of the tool point comes no nearer to a keep-out box than the overhang, and never enters it. */
final class KeepOutLimit implements LimitRule {

    /** What is compared, and what is not. */
    private static final String COMPARED = " Only the tool point's way, widened by the overhang, is compared; the"
            + " links, and a lift column, are not.";

    private record Near(KeepOut box, Vector place, double distance, int step, int line, String where) {}

    @Override
    public Stream<Finding> findings(CheckedProgram program) {
        List<KeepOut> boxes = program.cell().limits().keepOut();
        if (boxes.isEmpty()) {
            return Stream.of(
                    new Finding.Notice(Details.of(Check.KEEP_OUT, "No limit set: the cell has no keep-out box.")));
        }
        double overhang = program.cell().fittedTool().overhangMm();
        List<Near> near = new ArrayList<>();
        boxes.forEach(box -> near.addAll(near(program, box, overhang)));
        if (!near.isEmpty()) {
            Near first = near.get(0);
            List<Integer> others = near.stream()
                    .map(Near::step)
                    .filter(step -> step != first.step())
                    .toList();
            return Stream.of(
                    new Finding.Outside(Details.of(Check.KEEP_OUT, says(first, overhang) + Places.others(others))
                            .comparing(Math.max(0, first.distance()), overhang, "mm")
                            .from(LimitSource.CELL)
                            .atStep(first.step(), first.line())));
        }
        if (!program.figures().waysComplete()) {
            return Stream.of(Finding.notCheckable(Details.of(Check.KEEP_OUT, Places.MISSING_WAYS)));
        }
        return Stream.of(new Finding.Within(Details.of(
                Check.KEEP_OUT,
                "The way keeps the overhang of " + plain(overhang) + " mm from every keep-out box." + COMPARED)));
    }

    private static List<Near> near(CheckedProgram program, KeepOut box, double overhang) {
        List<Near> near = new ArrayList<>();
        Point start = program.motion().start();
        if (start != null) {
            Vector place = start.pose().place();
            near.add(new Near(box, place, box.box().distance(place), 0, start.line(), "The start"));
        }
        for (StepMotion step : program.motion().steps()) {
            if (step.target() != null) {
                near.add(nearest(step, step.target().pose().place(), box, overhang));
            }
        }
        near.removeIf(one -> !Tolerance.isOutside(overhang - one.distance()));
        return near;
    }

    private static Near nearest(StepMotion step, Vector target, KeepOut box, double overhang) {
        PathSearch.Extreme nearest = step.trace() == null
                ? new PathSearch.Extreme(target, box.box().distance(target))
                : new PathSearch(step.trace().path()).least(box.box()::distance, overhang);
        String where = step.closing() ? "The move that closes the loop" : "Step " + step.step();
        return new Near(box, nearest.place(), nearest.value(), step.step(), step.line(), where);
    }

    private static String says(Near near, double overhang) {
        String how = near.distance() <= 0
                ? " enters the keep-out box "
                : " comes within " + down(near.distance(), 1) + " mm of the keep-out box ";
        return near.where() + how + Words.quoted(near.box().name()) + " near " + Places.near(near.place())
                + "; tool and part reach " + plain(overhang)
                + " mm beyond it. Go round it, or above it." + COMPARED;
    }
}
