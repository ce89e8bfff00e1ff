package org.standclear.core.arm.articulated;

import java.util.List;
import java.util.OptionalDouble;
import org.standclear.core.arm.AxisValues;
import org.standclear.core.arm.LineFollowing;
import org.standclear.core.arm.Posture;
import org.standclear.core.geometry.Angles;
import org.standclear.core.geometry.Rotation;

/** The axes along a straight line in one posture, by the closed form. */
final class ClosedFormLine implements LineFollowing {

    private final List<DhRow> rows;
    private final ClosedForm form;
    private final FlangeLine line;
    private final Posture posture;
    private final double[] first;

    ClosedFormLine(List<DhRow> rows, ClosedForm form, FlangeLine line, Posture posture, AxisValues from) {
        this.rows = rows;
        this.form = form;
        this.line = line;
        this.posture = posture;
        this.first = Inverse.values(from);
    }

    @Override
    public OptionalDouble leavesReach() {
        double lever = line.lever() + rows.get(5).length();
        return new WristWay(form, line, posture, lever).leaves();
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
