package org.standclear.check.picture;

import java.util.ArrayList;
import java.util.List;
import java.util.Objects;
import org.jspecify.annotations.Nullable;
import org.standclear.check.picture.Drawing.Line;
import org.standclear.check.picture.Drawing.Word;
import org.standclear.check.picture.Samples.OfSpan;
import org.standclear.check.picture.View.Axes;
import org.standclear.core.arm.AxisValues;
import org.standclear.core.cell.CellDescription;
import org.standclear.core.cell.KeepOut;
import org.standclear.core.check.CheckAnswer;
import org.standclear.core.geometry.Box;
import org.standclear.core.geometry.Vector;
import org.standclear.core.timeline.Moment;

/** The cell and the way of the tool point, from above and from the side. */
final class Views {

    static final int WIDTH = 560;
    private static final int MARGIN = 26;

    private final CheckAnswer answer;
    private final CellDescription cell;
    private final Samples samples;

    Views(CheckAnswer answer, Samples samples) {
        this.answer = answer;
        this.cell = answer.program().cell();
        this.samples = samples;
    }

    /** From above. */
    Drawing plan() {
        View view = planView();
        CellLines around = new CellLines(view).boxes(cell).ring(cell).measure().compass();
        AxisValues standing = standing();
        if (standing != null) {
            around.arm(cell, standing);
        }
        Surroundings people = new Surroundings(answer).under(view, WIDTH);
        around.lines().addAll(people.lines());
        around.words().addAll(people.words());
        String says = PlanWords.of(answer, samples) + " " + people.says();
        return drawing("plan", "Seen from above", says, view, around, Surroundings.HEIGHT);
    }

    /** The view that shows the way, the space and the arm from above. */
    View planView() {
        Extent area = area(Axes.X_AND_Y).with(0, 0);
        cell.arm().ring().ifPresent(ring -> {
            area.with(-ring.max(), 0).with(ring.max(), 0);
            // a cell that works in front of its arm needs no paper for what lies behind it
            area.with(0, ring.max());
        });
        return View.of(Axes.X_AND_Y, area.rounded(), WIDTH, MARGIN);
    }

    /** From the side on which the way is seen at its longest. */
    Drawing side() {
        Axes axes = span(Axes.Y_AND_Z) > span(Axes.X_AND_Z) ? Axes.Y_AND_Z : Axes.X_AND_Z;
        View view = View.of(axes, area(axes).rounded(), WIDTH, MARGIN);
        CellLines around = new CellLines(view).boxes(cell).measure().compass();
        String seen = axes == Axes.X_AND_Z ? "Seen from the front" : "Seen from the side";
        return drawing("side", seen, PlanWords.side(axes, samples), view, around, 0);
    }

    private Drawing drawing(String key, String title, String says, View view, CellLines around, int below) {
        List<Line> back = new ArrayList<>(around.lines());
        List<Word> words = new ArrayList<>(around.words());
        double limit = answer.toolSpeedLimit().value();
        StepNumbers numbers = new StepNumbers(view, WIDTH, view.height());
        words.addAll(numbers.of(samples.spans()));
        WayLines ways = new WayLines(view, limit, Troubled.in(answer));
        return new Drawing(key, title, says, WIDTH, view.height() + below, back, ways.of(samples.spans()), words);
    }

    /** Where the axes stand when the program begins; null when not known. */
    private @Nullable AxisValues standing() {
        return samples.spans().stream()
                .flatMap(span -> span.moments().stream())
                .map(Moment::axes)
                .filter(Objects::nonNull)
                .findFirst()
                .orElse(null);
    }

    private Extent area(Axes axes) {
        Extent area = new Extent();
        for (OfSpan span : samples.spans()) {
            for (Moment moment : span.moments()) {
                Vector tool = moment.tool();
                if (tool != null) {
                    area.with(axes.across(tool), axes.up(tool));
                }
            }
        }
        Box space = cell.limits().space();
        if (space != null) {
            with(area, axes, space);
        }
        if (axes == Axes.X_AND_Y) {
            // from the side a keep-out as high as the arm would leave the way no room; it is cut at the edge
            for (KeepOut keepOut : cell.limits().keepOut()) {
                with(area, axes, keepOut.box());
            }
        }
        return area;
    }

    private static void with(Extent area, Axes axes, Box box) {
        area.with(axes.across(box).min(), axes.up(box).min());
        area.with(axes.across(box).max(), axes.up(box).max());
    }

    private double span(Axes axes) {
        double least = Double.POSITIVE_INFINITY;
        double most = Double.NEGATIVE_INFINITY;
        for (OfSpan span : samples.spans()) {
            for (Moment moment : span.moments()) {
                if (moment.tool() != null) {
                    least = Math.min(least, axes.across(moment.tool()));
                    most = Math.max(most, axes.across(moment.tool()));
                }
            }
        }
        return most - least;
    }
}
