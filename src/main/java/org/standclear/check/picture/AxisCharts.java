package org.standclear.check.picture;

import java.util.ArrayList;
import java.util.List;
import org.jspecify.annotations.Nullable;
import org.standclear.check.picture.Drawing.Line;
import org.standclear.check.picture.Drawing.StepLines;
import org.standclear.check.picture.Drawing.Word;
import org.standclear.check.picture.Samples.OfSpan;
import org.standclear.core.arm.Axis;
import org.standclear.core.arm.AxisValues;
import org.standclear.core.quantity.ShownNumber;
import org.standclear.core.timeline.Moment;

/** How fast each axis goes over one pass, as a share of its own speed; one row an axis. */
final class AxisCharts {

    private static final int LEFT = 112;
    private static final int RIGHT = 842;
    private static final int TOP = 24;
    private static final int ROW = 58;
    private static final int GAP = 12;

    /** Shares above this are drawn at the top of their row, in percent. */
    private static final double MOST = 200;

    private final List<Axis> axes;
    private final Samples samples;
    private final TimeAxis time;
    private final List<Line> lines = new ArrayList<>();
    private final List<Word> words = new ArrayList<>();
    private final List<String> says = new ArrayList<>();

    AxisCharts(List<Axis> axes, Samples samples) {
        this.axes = axes;
        this.samples = samples;
        this.time = TimeAxis.of(samples.timeline().seconds(), LEFT, RIGHT, TOP, bottom(axes.size()));
    }

    private static double bottom(int rows) {
        return TOP + rows * (ROW + GAP) - GAP;
    }

    Drawing drawing() {
        time.ticks(lines, words);
        time.numbers(samples.timeline(), lines, words);
        for (int i = 0; i < axes.size(); i++) {
            row(i);
        }
        List<StepLines> columns = time.columns(samples.timeline());
        return new Drawing(
                "axes",
                "Each axis over time, as a share of its own speed",
                String.join(" ", says),
                SpeedChart.WIDTH,
                (int) bottom(axes.size()) + 28,
                lines,
                columns,
                words);
    }

    private void row(int axis) {
        double bottom = bottom(axis + 1);
        double top = bottom - ROW;
        Double peak = AxisShare.greatest(axes.get(axis), axis, samples.spans());
        double most = peak == null ? 100 : Math.min(MOST, Math.max(100, peak));
        Scale share = new Scale(0, most * 1.05, bottom, top);
        double full = share.at(100);
        lines.add(new Line("base", PathText.line(List.of(new Place(LEFT, bottom), new Place(RIGHT, bottom)))));
        lines.add(new Line("limit", PathText.line(List.of(new Place(LEFT, full), new Place(RIGHT, full)))));
        lines.add(new Line("speed", curve(axis, share)));
        words.add(Word.at(
                new Place(4, bottom - 26), "start", "name", axes.get(axis).name()));
        words.add(Word.at(new Place(4, bottom - 8), "start", "quiet", shown(peak)));
        words.add(Word.at(new Place(LEFT - 5, full + 5), "end", "quiet", "100 %"));
        says.add(axes.get(axis).name() + ": " + shown(peak) + ".");
    }

    private String shown(@Nullable Double peak) {
        if (peak == null) {
            return "no speed given";
        }
        return Double.isFinite(peak) ? "to " + ShownNumber.up(peak, 0) + " %" : "jumps";
    }

    private String curve(int axis, Scale share) {
        Curve curve = new Curve(time.time(), share);
        for (OfSpan span : samples.spans()) {
            if (span.span().isUnknown()) {
                curve.lift();
                continue;
            }
            for (Moment moment : span.moments()) {
                AxisValues rates = moment.rates();
                Double part = rates == null ? Double.valueOf(0) : AxisShare.percent(axes.get(axis), rates.get(axis));
                curve.to(moment.seconds(), part == null ? 0 : part);
            }
        }
        return curve.path();
    }
}
