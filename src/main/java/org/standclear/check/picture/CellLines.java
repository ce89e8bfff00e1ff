package org.standclear.check.picture;

import java.util.ArrayList;
import java.util.List;
import org.standclear.check.picture.Drawing.Line;
import org.standclear.check.picture.Drawing.Word;
import org.standclear.core.arm.AxisValues;
import org.standclear.core.cell.CellDescription;
import org.standclear.core.cell.KeepOut;
import org.standclear.core.geometry.Box;
import org.standclear.core.geometry.Vector;
import org.standclear.core.quantity.Interval;
import org.standclear.core.quantity.ShownNumber;

/** What a cell sets around the arm, drawn on a view: its space, its keep-outs, the ring it reaches, its foot. */
final class CellLines {

    private static final double HATCH = 7;
    private static final double FOOT = 5;

    private final View view;
    private final List<Line> lines = new ArrayList<>();
    private final List<Word> words = new ArrayList<>();

    CellLines(View view) {
        this.view = view;
    }

    /** A box in which the tool point has to stay, and boxes that it must not enter. */
    CellLines boxes(CellDescription cell) {
        Box space = cell.limits().space();
        if (space != null) {
            lines.add(new Line("space", PathText.box(view.low(space), view.high(space))));
            Place low = view.low(space);
            words.add(Word.at(new Place(low.x() + 5, low.y() - 6), "start", "quiet", "space"));
        }
        for (KeepOut keepOut : cell.limits().keepOut()) {
            Place low = view.low(keepOut.box());
            Place high = view.high(keepOut.box());
            lines.add(new Line("keep-out", PathText.box(low, high)));
            lines.add(new Line("keep-out-hatch", PathText.hatch(low, high, HATCH)));
            double middle = (low.x() + high.x()) / 2;
            String anchor = middle < view.across().start() + 60
                    ? "start"
                    : middle > view.across().end() - 60 ? "end" : "middle";
            words.add(Word.at(new Place(middle, Math.max(14, high.y() - 5)), anchor, "stopword", keepOut.name()));
        }
        return this;
    }

    /** The ring that the flange reaches, seen from above, and axis 1 in its middle. */
    CellLines ring(CellDescription cell) {
        Place foot = view.at(new Vector(0, 0, 0));
        cell.arm().ring().ifPresent(this::reaches);
        lines.add(new Line("foot", PathText.circle(foot, FOOT)));
        return this;
    }

    private void reaches(Interval ring) {
        reach(ring.max());
        if (view.length(ring.min()) > FOOT) {
            reach(ring.min());
        }
    }

    private void reach(double mm) {
        RingArcs.of(view, mm).forEach(arc -> lines.add(new Line("reach", PathText.line(arc))));
    }

    /** The arm's links where the axes stand. */
    CellLines arm(CellDescription cell, AxisValues at) {
        List<Vector> outline = cell.arm().outline(at, cell.fittedTool().offset());
        List<Place> places = outline.stream().map(view::at).toList();
        lines.add(new Line("arm", PathText.line(places)));
        for (Place joint : places.subList(0, places.size() - 1)) {
            lines.add(new Line("joint", PathText.circle(joint, FOOT - 1)));
        }
        return this;
    }

    /** A length to compare with, at the lower right corner. */
    CellLines measure() {
        double mm = view.across().roundStep(6);
        double right = view.across().end();
        double y = view.height() - 8;
        double left = right - view.length(mm);
        lines.add(new Line(
                "measure",
                PathText.line(List.of(new Place(left, y - 5), new Place(left, y)))
                        + PathText.line(List.of(new Place(left, y), new Place(right, y)))
                        + PathText.line(List.of(new Place(right, y), new Place(right, y - 5)))));
        words.add(Word.at(new Place(left - 6, y), "end", "quiet", ShownNumber.plain(mm) + " mm"));
        return this;
    }

    /** Which way the axes of the frame point, at the lower left corner. */
    CellLines compass() {
        double y = view.height() - 8;
        double x = 10;
        lines.add(new Line(
                "measure",
                PathText.line(List.of(new Place(x, y - 24), new Place(x, y)))
                        + PathText.line(List.of(new Place(x, y), new Place(x + 24, y)))));
        words.add(
                Word.at(new Place(x + 28, y + 4), "start", "quiet", view.axes().acrossName()));
        words.add(
                Word.at(new Place(x - 3, y - 29), "start", "quiet", view.axes().upName()));
        return this;
    }

    List<Line> lines() {
        return lines;
    }

    List<Word> words() {
        return words;
    }
}
