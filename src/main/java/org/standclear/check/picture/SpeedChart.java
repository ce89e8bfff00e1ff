package org.standclear.check.picture;

import java.util.ArrayList;
import java.util.List;
import org.jspecify.annotations.Nullable;
import org.standclear.check.picture.Drawing.Line;
import org.standclear.check.picture.Drawing.Word;
import org.standclear.check.picture.Samples.OfSpan;
import org.standclear.core.check.CheckAnswer;
import org.standclear.core.quantity.ShownNumber;
import org.standclear.core.timeline.Moment;

/** The tool point's speed over one pass, its limit, and behind it the same program in full power. */
final class SpeedChart {

    static final int WIDTH = 860;
    private static final int HEIGHT = 280;
    private static final int LEFT = 58;
    private static final int RIGHT = 842;
    private static final int TOP = 30;
    private static final int BOTTOM = 252;

    private final CheckAnswer answer;
    private final Samples held;
    private final Samples full;
    private final TimeAxis time;
    private final Scale speed;
    private final List<Line> lines = new ArrayList<>();
    private final List<Word> words = new ArrayList<>();

    SpeedChart(CheckAnswer answer, Samples held, Samples full) {
        this.answer = answer;
        this.held = held;
        this.full = full;
        this.time =
                TimeAxis.of(Math.max(held.timeline().seconds(), full.timeline().seconds()), LEFT, RIGHT, TOP, BOTTOM);
        double most = Math.max(
                answer.toolSpeedLimit().value(),
                Math.max(answer.figures().knownToolPeakMmS(), answer.figures().knownFullPowerPeakMmS()));
        this.speed = new Scale(0, most * 1.08, BOTTOM, TOP);
    }

    Drawing drawing() {
        time.ticks(lines, words);
        time.numbers(held.timeline(), lines, words);
        heights();
        lines.add(new Line("ghost", curve(full)));
        lines.add(new Line("speed", curve(held)));
        limit();
        return new Drawing(
                "speed", "Speed of the tool point over time", says(), WIDTH, HEIGHT, lines, columns(), words);
    }

    private List<Drawing.StepLines> columns() {
        return time.columns(held.timeline());
    }

    private void heights() {
        double step = speed.roundStep(5);
        StringBuilder ticks = new StringBuilder();
        for (int i = 0; i * step <= speed.most(); i++) {
            double y = speed.at(i * step);
            ticks.append(PathText.line(List.of(new Place(LEFT, y), new Place(RIGHT, y))));
            words.add(Word.at(new Place(LEFT - 6, y + 4), "end", "quiet", ShownNumber.plain(i * step)));
        }
        words.add(Word.at(new Place(4, TOP - 14), "start", "quiet", "mm/s"));
        lines.add(new Line("tick", ticks.toString()));
    }

    private void limit() {
        double limit = answer.toolSpeedLimit().value();
        double y = speed.at(limit);
        lines.add(new Line("limit", PathText.line(List.of(new Place(LEFT, y), new Place(RIGHT, y)))));
        words.add(Word.at(new Place(RIGHT, y - 6), "end", "limit-word", "limit " + ShownNumber.plain(limit) + " mm/s"));
    }

    private String curve(Samples samples) {
        Curve curve = new Curve(time.time(), speed);
        for (OfSpan span : samples.spans()) {
            if (span.span().isUnknown()) {
                curve.lift();
                continue;
            }
            for (Moment moment : span.moments()) {
                curve.to(moment.seconds(), moment.toolSpeedMmS());
            }
        }
        return curve.path();
    }

    private String says() {
        String limit =
                "The limit is " + ShownNumber.plain(answer.toolSpeedLimit().value()) + " mm/s.";
        String held = "Held, the tool point reaches " + peak(answer.figures().toolPeakMmS()) + " and the pass takes "
                + seconds(answer.motion().cycleTimeS()) + "; ";
        String full = peak(answer.figures().fullPowerPeakMmS()) + " and take "
                + seconds(answer.motion().fullPowerCycleTimeS());
        boolean same = held.equals(
                "Held, the tool point reaches " + full.replace(" and take ", " and the pass takes ") + "; ");
        return held
                + (same ? "in full power it would be the same. " : "in full power it would reach " + full + ". ")
                + limit;
    }

    private static String peak(@Nullable Double value) {
        return value == null ? "a speed that is not known" : ShownNumber.up(value, 1) + " mm/s";
    }

    private static String seconds(@Nullable Double value) {
        return value == null ? "a time that is not known" : ShownNumber.up(value, 2) + " s";
    }
}
