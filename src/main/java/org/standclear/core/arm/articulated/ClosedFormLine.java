package org.standclear.core.arm.articulated;

import java.util.List;
import java.util.OptionalDouble;
import org.standclear.core.arm.AxisValues;
import org.standclear.core.arm.LineFollowing;
import org.standclear.core.arm.Posture;
import org.standclear.core.geometry.Angles;
import org.standclear.core.geometry.Rotation;
import org.standclear.core.geometry.Vector;
import org.standclear.core.quantity.Tolerance;

/** The axes along a straight line in one posture, by the closed form. */
final class ClosedFormLine implements LineFollowing {

    /** A line is looked at no finer than this part of its length. */
    private static final double FINEST = 1e-6;

    private static final int PARTS = 16;

    private final List<DhRow> rows;
    private final ClosedForm form;
    private final FlangeLine line;
    private final Posture posture;
    private final double[] first;
    private final double bound;

    ClosedFormLine(List<DhRow> rows, ClosedForm form, FlangeLine line, Posture posture, AxisValues from) {
        this.rows = rows;
        this.form = form;
        this.line = line;
        this.posture = posture;
        this.first = Inverse.values(from);
        this.bound = line.speedBound(line.lever() + rows.get(5).length());
    }

    private double margin(double mm) {
        Rotation turned = line.turned(mm);
        Vector wrist = form.wrist(line.flange(mm, turned), turned);
        return form.reach(wrist, posture).margin();
    }

    @Override
    public OptionalDouble leavesReach() {
        double before = margin(0);
        for (int i = 1; i <= PARTS; i++) {
            double from = line.length() * (i - 1) / PARTS;
            double to = line.length() * i / PARTS;
            double after = margin(to);
            OptionalDouble leaves = beyond(from, before, to, after);
            if (leaves.isPresent()) {
                return leaves;
            }
            before = after;
        }
        return OptionalDouble.empty();
    }

    /** Halves a part until the wrist cannot get out of reach and back in it. */
    private OptionalDouble beyond(double from, double first, double to, double last) {
        if (Tolerance.isOutside(-first)) {
            return OptionalDouble.of(from);
        }
        double width = to - from;
        // the wrist goes at most so far in this part; where the shoulder stands aside it may gain a little more on it
        if (Math.min(first, last) > bound * width) {
            return OptionalDouble.empty();
        }
        double middle = from + width / 2;
        double between = margin(middle);
        double sag = Math.abs(first - 2 * between + last);
        boolean isEven = Math.min(between, Math.min(first, last)) > 2 * sag && width < line.length() / 1000;
        if (width < FINEST * line.length() || isEven) {
            return Tolerance.isOutside(-last) ? OptionalDouble.of(to) : OptionalDouble.empty();
        }
        OptionalDouble early = beyond(from, first, middle, between);
        return early.isPresent() ? early : beyond(middle, between, to, last);
    }

    private double[] solved(double mm, double[] near) {
        Rotation turned = line.turned(mm);
        return form.solve(form.wrist(line.flange(mm, turned), turned), turned, posture, near);
    }

    @Override
    public AxisValues at(double mm, AxisValues near) {
        double[] before = Inverse.values(near);
        double[] q = solved(mm, before);
        for (int i = 0; i < q.length; i++) {
            q[i] = Angles.nearest(q[i], before[i]);
        }
        return AxisValues.of(q);
    }

    @Override
    public AxisValues ratesPerMm(double mm) {
        return line.rates(rows, solved(mm, first), mm);
    }
}
