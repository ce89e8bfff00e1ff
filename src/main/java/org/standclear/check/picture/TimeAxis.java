package org.standclear.check.picture;

import java.util.ArrayList;
import java.util.List;
import org.standclear.check.picture.Drawing.Line;
import org.standclear.check.picture.Drawing.StepLines;
import org.standclear.check.picture.Drawing.Word;
import org.standclear.core.quantity.ShownNumber;
import org.standclear.core.timeline.Span;
import org.standclear.core.timeline.Timeline;

/** Time along the bottom of a chart, and a column for each step that can be marked. */
record TimeAxis(Scale time, double top, double bottom) {

    private static final double NUMBER_ROOM = 22;

    /** Times from 0 to the end of the longer of what is drawn. */
    static TimeAxis of(double seconds, double left, double right, double top, double bottom) {
        return new TimeAxis(new Scale(0, Math.max(seconds, 0.1), left, right), top, bottom);
    }

    /** Ticks at round times with their words below. */
    void ticks(List<Line> lines, List<Word> words) {
        double step = time.roundStep(8);
        StringBuilder ticks = new StringBuilder();
        for (int i = 0; i * step <= time.most(); i++) {
            double x = time.at(i * step);
            ticks.append(PathText.line(List.of(new Place(x, top), new Place(x, bottom))));
            boolean isLast = (i + 1) * step > time.most();
            String text = ShownNumber.plain(Math.round(i * step * 1e6) / 1e6) + (isLast ? " s" : "");
            words.add(Word.at(new Place(x, bottom + 16), "middle", "quiet", text));
        }
        lines.add(new Line("tick", ticks.toString()));
    }

    /** A column for each of the first steps; one without time is a thin one. */
    List<StepLines> columns(Timeline timeline) {
        List<StepLines> columns = new ArrayList<>();
        for (Span span : timeline.spans()) {
            if (columns.size() < WayLines.STEPS_OF_THEIR_OWN) {
                double left = time.at(span.from());
                double right = Math.max(left + 1, time.at(span.until()));
                Line column = new Line("column", PathText.box(new Place(left, top), new Place(right, bottom)));
                columns.add(new StepLines(span.key(), StepWords.of(span), List.of(column)));
            }
        }
        return columns;
    }

    /** The numbers of the steps above their columns, where there is room; a mark where speeds are not known. */
    void numbers(Timeline timeline, List<Line> lines, List<Word> words) {
        double taken = Double.NEGATIVE_INFINITY;
        for (Span span : timeline.spans()) {
            double middle = (time.at(span.from()) + time.at(span.until())) / 2;
            if (span.isUnknown() && span.step().isMove()) {
                lines.add(
                        new Line("missing", PathText.line(List.of(new Place(middle, top), new Place(middle, bottom)))));
            }
            if (span.step().isMove() && middle - taken >= NUMBER_ROOM) {
                String number = span.step().step() + (span.step().closing() ? "c" : "");
                words.add(Word.at(new Place(middle, top - 6), "middle", "number", number));
                taken = middle;
            }
        }
    }
}
