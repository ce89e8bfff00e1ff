package org.standclear.check.picture;

import java.util.ArrayList;
import java.util.List;
import org.jspecify.annotations.Nullable;
import org.standclear.check.picture.Samples.OfSpan;
import org.standclear.core.arm.Axis;
import org.standclear.core.geometry.Vector;
import org.standclear.core.program.Point;
import org.standclear.core.quantity.ShownNumber;
import org.standclear.core.timeline.Span;

/**
 * What the drawings show of one step, in numbers.
 *
 * @param band how its fastest stretch is drawn; empty for a step that does not move
 * @param shares how much of its own speed each axis uses at most
 */
public record PictureRow(
        String key,
        String name,
        String to,
        String x,
        String y,
        String z,
        String begins,
        String ends,
        String band,
        List<String> shares) {

    public PictureRow {
        shares = List.copyOf(shares);
    }

    static PictureRow of(OfSpan samples, List<Axis> axes, double limit) {
        Span span = samples.span();
        Vector tool = samples.last().tool();
        Point target = span.step().target();
        List<String> shares = new ArrayList<>();
        for (int i = 0; i < axes.size(); i++) {
            shares.add(share(span, AxisShare.greatest(axes.get(i), i, List.of(samples))));
        }
        return new PictureRow(
                span.key(),
                span.name(),
                target == null ? span.step().kind().word() : target.name(),
                tool == null ? "not known" : PathText.number(tool.x()),
                tool == null ? "not known" : PathText.number(tool.y()),
                tool == null ? "not known" : PathText.number(tool.z()),
                ShownNumber.up(span.from(), 2),
                span.isUnknown() ? "not known" : ShownNumber.up(span.until(), 2),
                band(span, limit),
                shares);
    }

    private static String share(Span span, @Nullable Double share) {
        if (share == null || span.isUnknown()) {
            return "not known";
        }
        return Double.isFinite(share) ? ShownNumber.up(share, 0) + " %" : "jumps";
    }

    private static String band(Span span, double limit) {
        if (!span.step().isMove()) {
            return "";
        }
        return span.step().peaks() == null
                ? SpeedBand.UNKNOWN.words()
                : SpeedBand.of(span.step().peaks().heldTool(), limit).words();
    }
}
