package org.standclear.core.motion;

import java.util.ArrayList;
import java.util.List;
import java.util.function.BiConsumer;
import org.jspecify.annotations.Nullable;
import org.standclear.core.arm.Arm;
import org.standclear.core.arm.Axis;
import org.standclear.core.arm.ToolWay;
import org.standclear.core.quantity.Tolerance;

/** Computes straight moves and arcs: the tool point's speed is given, the axes follow. */
final class StraightMotion {

    private final Arm arm;
    private final ToolWay line;
    private final MoveConditions conditions;
    private final Profile full;
    private final Profile held;

    /** A way at a speed (override counted in) and an acceleration, mm and s. */
    StraightMotion(Arm arm, ToolWay line, MoveConditions conditions, double speed, double acceleration) {
        this.arm = arm;
        this.line = line;
        this.conditions = conditions;
        this.full = new Profile(line.length(), speed, acceleration);
        this.held = full.cruisingAt(Math.min(speed, conditions.ceiling()));
    }

    MoveMotion motion(AxisTrack track) {
        double turn = Math.abs(Math.toRadians(line.turnPerMm()));
        double overhang = held.peak() * (1 + turn * conditions.overhangMm());
        double elbow = 0;
        for (int end = 0; end < arm.linkEnds(); end++) {
            int one = end;
            elbow = Math.max(
                    elbow,
                    track.curve((at, rates) -> arm.linkEndSpeed(one, at, rates)).peak(held));
        }
        return MoveMotion.of(
                new LinePath(line, track.ownRadius(), track.again()),
                held,
                full,
                new Peaks(full.peak(), held.peak(), elbow, overhang));
    }

    /** Tells of the axis that is asked most of, and of each whose own speed is not known. */
    void uses(AxisTrack track, BiConsumer<Axis, @Nullable Double> taker) {
        List<Axis> axes = arm.axes();
        Axis most = null;
        double greatest = 0;
        double part = -1;
        List<Axis> unknown = new ArrayList<>();
        for (int i = 0; i < axes.size(); i++) {
            Double own = axes.get(i).speed();
            if (own == null) {
                if (track.span(i) > Tolerance.LENGTH) {
                    unknown.add(axes.get(i));
                }
                continue;
            }
            double speed = track.peak(i, held);
            if (speed / own > part) {
                part = speed / own;
                greatest = speed;
                most = axes.get(i);
            }
        }
        if (most != null) {
            taker.accept(most, greatest);
        }
        unknown.forEach(axis -> taker.accept(axis, null));
    }
}
