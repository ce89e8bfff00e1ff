package org.standclear.check.picture;

import java.util.List;
import java.util.Map;
import org.jspecify.annotations.Nullable;
import org.standclear.core.arm.Axis;
import org.standclear.core.check.CheckAnswer;
import org.standclear.core.timeline.Timeline;

/**
 * All drawings of one answer.
 *
 * @param plan the cell and the way from above, with the rings around axis 1
 * @param side the same from the side
 * @param speed the tool point's speed over time
 * @param axes each axis's speed over time
 * @param frames moments of the pass
 * @param rows the same in numbers, step by step
 * @param axisNames heads of the rows' last columns
 * @param leftOut says which steps are not drawn; null when all are
 * @param play the pass as moments for play-back
 */
public record ProgramPictures(
        Drawing plan,
        Drawing side,
        Drawing speed,
        Drawing axes,
        List<Drawing> frames,
        List<PictureRow> rows,
        List<String> axisNames,
        @Nullable String leftOut,
        Map<String, @Nullable Object> play) {

    /** More steps than this are not drawn: a drawing of them would be black. */
    static final int MOST_STEPS = 5_000;

    public ProgramPictures {
        frames = List.copyOf(frames);
        rows = List.copyOf(rows);
        axisNames = List.copyOf(axisNames);
    }

    /** Draws an answer from the paths and speeds that it was made with. */
    public static ProgramPictures of(CheckAnswer answer) {
        Timeline timeline = Timeline.held(answer.motion(), MOST_STEPS);
        Samples held = Samples.of(timeline);
        Samples full = Samples.of(Timeline.fullPower(answer.motion(), MOST_STEPS));
        Views views = new Views(answer, held);
        List<Axis> axes = answer.program().cell().arm().axes();
        double limit = answer.toolSpeedLimit().value();
        List<PictureRow> rows = held.spans().stream()
                .limit(WayLines.STEPS_OF_THEIR_OWN)
                .map(span -> PictureRow.of(span, axes, limit))
                .toList();
        return new ProgramPictures(
                views.plan(),
                views.side(),
                new SpeedChart(answer, held, full).drawing(),
                new AxisCharts(axes, held).drawing(),
                new Filmstrip(answer.program().cell(), timeline, views).frames(),
                rows,
                axes.stream().map(Axis::name).toList(),
                leftOut(answer, timeline),
                PlayBack.of(answer, timeline, views.planView()));
    }

    private static @Nullable String leftOut(CheckAnswer answer, Timeline timeline) {
        return timeline.isWhole()
                ? null
                : "Only the first " + MOST_STEPS + " of "
                        + answer.motion().steps().size() + " steps are drawn; all are checked.";
    }
}
