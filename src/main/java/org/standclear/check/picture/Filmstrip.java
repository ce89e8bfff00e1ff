package org.standclear.check.picture;

import java.util.ArrayList;
import java.util.List;
import org.standclear.check.picture.Drawing.Line;
import org.standclear.core.arm.AxisValues;
import org.standclear.core.cell.CellDescription;
import org.standclear.core.geometry.Vector;
import org.standclear.core.quantity.ShownNumber;
import org.standclear.core.timeline.Moment;
import org.standclear.core.timeline.Span;
import org.standclear.core.timeline.Timeline;

/** A few moments of the pass side by side, for those who want no movement and for paper. */
final class Filmstrip {

    private static final int MOST = 8;

    private final CellDescription cell;
    private final Timeline timeline;
    private final Views views;

    Filmstrip(CellDescription cell, Timeline timeline, Views views) {
        this.cell = cell;
        this.timeline = timeline;
        this.views = views;
    }

    /** One drawing a moment: where the moves end, evenly chosen when there are many. */
    List<Drawing> frames() {
        List<Span> moves =
                timeline.spans().stream().filter(span -> span.step().isMove()).toList();
        int count = Math.min(MOST, moves.size());
        List<Drawing> frames = new ArrayList<>();
        for (int i = 0; i < count; i++) {
            int index = count == 1 ? 0 : (int) Math.round((double) i * (moves.size() - 1) / (count - 1));
            Span span = moves.get(index);
            frames.add(frame(i + 1, timeline.at(span, span.until())));
        }
        return frames;
    }

    private Drawing frame(int number, Moment moment) {
        View view = views.planView();
        CellLines around = new CellLines(view).ring(cell);
        AxisValues axes = moment.axes();
        if (axes != null) {
            around.arm(cell, axes);
        }
        List<Line> lines = new ArrayList<>(around.lines());
        Vector tool = moment.tool();
        if (tool != null) {
            lines.add(new Line("tool", PathText.circle(view.at(tool), 9)));
        }
        String title = ShownNumber.up(moment.seconds(), 2) + " s, end of step "
                + moment.span().name();
        String says = tool == null
                ? "where the tool point is, is not known"
                : "tool point at x " + PathText.number(tool.x()) + ", y " + PathText.number(tool.y()) + ", z "
                        + PathText.number(tool.z()) + " mm";
        return new Drawing("frame-" + number, title, says, Views.WIDTH, view.height(), lines, List.of(), List.of());
    }
}
