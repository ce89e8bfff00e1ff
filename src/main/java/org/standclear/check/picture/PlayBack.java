package org.standclear.check.picture;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import org.jspecify.annotations.Nullable;
import org.standclear.core.arm.Axis;
import org.standclear.core.arm.AxisValues;
import org.standclear.core.cell.CellDescription;
import org.standclear.core.check.CheckAnswer;
import org.standclear.core.geometry.Vector;
import org.standclear.core.quantity.ShownNumber;
import org.standclear.core.timeline.Moment;
import org.standclear.core.timeline.Timeline;

/** The pass as moments at even times, each with all that a page shows of it; the page itself computes nothing. */
final class PlayBack {

    private static final double FINEST = 0.04;
    private static final int MOST = 1500;

    private PlayBack() {}

    static Map<String, @Nullable Object> of(CheckAnswer answer, Timeline timeline, View view) {
        List<Object> moments = new ArrayList<>();
        double seconds = timeline.seconds();
        int parts = (int) Math.max(1, Math.min(MOST - 1, Math.ceil(seconds / FINEST)));
        if (!timeline.spans().isEmpty()) {
            for (int i = 0; i <= parts; i++) {
                moments.add(moment(answer.program().cell(), timeline.at(seconds * i / parts), view));
            }
        }
        Map<String, @Nullable Object> play = new LinkedHashMap<>();
        play.put("seconds", seconds);
        play.put("whole", timeline.isWhole());
        List<Axis> axes = answer.program().cell().arm().axes();
        play.put("axes", axes.stream().map(Axis::name).toList());
        play.put("units", axes.stream().map(Axis::unit).toList());
        play.put("moments", moments);
        return play;
    }

    private static Map<String, @Nullable Object> moment(CellDescription cell, Moment moment, View view) {
        Map<String, @Nullable Object> map = new LinkedHashMap<>();
        map.put("seconds", rounded(moment.seconds()));
        map.put("step", moment.span().key());
        map.put("says", says(moment));
        AxisValues axes = moment.axes();
        Vector tool = moment.tool();
        map.put("axes", axes == null ? null : values(axes));
        map.put("arm", axes == null ? null : arm(cell, axes, view));
        map.put("tool", tool == null ? null : PathText.circle(view.at(tool), 7));
        return map;
    }

    private static String says(Moment moment) {
        String speed =
                moment.span().isUnknown() ? "speed not known" : ShownNumber.up(moment.toolSpeedMmS(), 1) + " mm/s";
        return ShownNumber.up(moment.seconds(), 2) + " s, step " + moment.span().name() + ", line "
                + moment.span().step().line() + ", tool point " + speed;
    }

    private static List<Double> values(AxisValues axes) {
        List<Double> values = new ArrayList<>();
        for (int i = 0; i < axes.count(); i++) {
            values.add(rounded(axes.get(i)));
        }
        return values;
    }

    /** The links as path data of the plan view. */
    private static String arm(CellDescription cell, AxisValues axes, View view) {
        return PathText.line(cell.arm().outline(axes, cell.fittedTool().offset()).stream()
                .map(view::at)
                .toList());
    }

    private static double rounded(double value) {
        return Math.round(value * 1000) / 1000.0;
    }
}
