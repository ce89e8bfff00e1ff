package org.standclear.core.motion;

import org.jspecify.annotations.Nullable;
import org.standclear.core.arm.Arm;
import org.standclear.core.arm.Axis;
import org.standclear.core.quantity.Tolerance;

/**
 * Computes joint moves: every axis goes evenly along its way, so that all start and end together. The slowest axis sets
 * the pace; reduced power lowers the cruise until the tool point stays at or below the ceiling.
 */
final class JointMotion {

    /** Ways shorter than this are rounding, deg or mm. */
    private static final double NO_WAY = 1e-9;

    private final JointPath path;
    private final MoveConditions conditions;

    JointMotion(JointPath path, MoveConditions conditions) {
        this.path = path;
        this.conditions = conditions;
    }

    /** The motion at these percentages of the axes' own speeds and accelerations. */
    MoveMotion at(double speedPercent, double accelerationPercent) {
        if (isStill()) {
            return MoveMotion.still(path);
        }
        Double cruise = cruise(speedPercent);
        if (cruise == null) {
            return MoveMotion.along(path);
        }
        Profile full = new Profile(1, cruise, acceleration(accelerationPercent));
        SpeedCurve tool = SpeedCurve.even(path::toolSpeed, 1, path.parts());
        double fullPeak = tool.peak(full);
        double ceiling = conditions.ceiling();
        boolean isHeld = fullPeak > ceiling;
        Profile held = isHeld ? full.cruisingAt(Math.min(full.peak(), tool.cruiseHeldTo(ceiling, full))) : full;
        double heldPeak = isHeld ? ceiling : fullPeak;
        return MoveMotion.of(path, held, full, peaks(tool, held, fullPeak, heldPeak));
    }

    private Peaks peaks(SpeedCurve tool, Profile held, double fullPeak, double heldPeak) {
        Arm arm = path.arm();
        if (!arm.turnsEvenly()) {
            return new Peaks(fullPeak, heldPeak, linkEnds(held), overhang(held, heldPeak));
        }
        double overhang = arm.turnRate(path.from(), path.way()) * conditions.overhangMm();
        double elbow = 0;
        for (int end = 0; end < arm.linkEnds(); end++) {
            elbow = Math.max(elbow, path.linkEndSpeed(end, 0) * held.peak());
        }
        return new Peaks(fullPeak, heldPeak, elbow, overhang == 0 ? heldPeak : tool.peak(held, overhang));
    }

    private double linkEnds(Profile held) {
        double fastest = 0;
        for (int end = 0; end < path.arm().linkEnds(); end++) {
            int one = end;
            SpeedCurve curve = SpeedCurve.even(place -> path.linkEndSpeed(one, place), 1, path.parts());
            fastest = Math.max(fastest, curve.peak(held));
        }
        return fastest;
    }

    private double overhang(Profile held, double heldPeak) {
        double overhang = conditions.overhangMm();
        return overhang == 0
                ? heldPeak
                : SpeedCurve.even(place -> path.toolSpeed(place, overhang), 1, path.parts())
                        .peak(held);
    }

    private boolean isStill() {
        for (int i = 0; i < path.way().count(); i++) {
            if (Math.abs(path.way().get(i)) > NO_WAY) {
                return false;
            }
        }
        return true;
    }

    /** Per second; null when an axis moves whose speed the cell file leaves out. */
    private @Nullable Double cruise(double speedPercent) {
        Arm arm = path.arm();
        double least = Double.POSITIVE_INFINITY;
        for (int i = 0; i < arm.axes().size(); i++) {
            double way = Math.abs(path.way().get(i));
            Double speed = arm.axes().get(i).speed();
            if (speed == null && way > Tolerance.LENGTH) {
                return null;
            }
            if (speed != null && way > 0) {
                least = Math.min(least, speed * speedPercent / 100 * conditions.override() / way);
            }
        }
        return least;
    }

    private double acceleration(double accelerationPercent) {
        double least = Double.POSITIVE_INFINITY;
        for (int i = 0; i < path.way().count(); i++) {
            Axis axis = path.arm().axes().get(i);
            double way = Math.abs(path.way().get(i));
            if (way > 0) {
                least = Math.min(least, axis.acceleration() * accelerationPercent / 100 / way);
            }
        }
        return least;
    }
}
