package org.standclear.core.motion;

import org.standclear.core.arm.Arm;
import org.standclear.core.arm.AxisValues;
import org.standclear.core.geometry.Vector;

/** Every axis goes evenly from where it stands to where it has to be; the place runs from 0 to 1. */
record JointPath(Arm arm, Vector offset, AxisValues from, AxisValues way) implements ToolPath {

    /** The parts that carry the tool point turn less than this between two samples, taken together, rad. */
    private static final double FINE = 0.2;

    private static final int FEWEST = 8;
    private static final int MOST = 20_000;

    @Override
    public double length() {
        return 1;
    }

    @Override
    public Vector at(double place) {
        return arm.toolPose(from.plus(way, place), offset).place();
    }

    /** How far the tool point goes there while the place changes by 1, mm. */
    double toolSpeed(double place) {
        return arm.toolSpeed(from.plus(way, place), way, offset);
    }

    @Override
    public boolean isStraight() {
        return arm.turning(way, offset) == 0;
    }

    @Override
    public int parts() {
        double parts = Math.ceil(arm.turning(way, offset) / FINE);
        return (int) Math.max(FEWEST, Math.min(MOST, parts));
    }

    @Override
    public double speedBound() {
        return arm.toolSpeedBound(way, offset);
    }
}
