package org.standclear.core.motion;

import java.util.Optional;
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

    @Override
    public double toolSpeed(double place) {
        return arm.toolSpeed(from.plus(way, place), way, offset);
    }

    /** The same with the farthest part of the tool turning about it, mm. */
    double toolSpeed(double place, double overhang) {
        AxisValues at = from.plus(way, place);
        return arm.toolSpeed(at, way, offset) + arm.turnRate(at, way) * overhang;
    }

    /** How far one of the arm's link ends goes there while the place changes by 1, mm. */
    double linkEndSpeed(int end, double place) {
        return arm.linkEndSpeed(end, from.plus(way, place), way);
    }

    @Override
    public double ownRadius() {
        return arm.turnsEvenly() ? arm.ownRadius() : LinkEndRadius.greatest(arm, this::axesAt, length(), parts());
    }

    private AxisValues axesAt(double place) {
        return from.plus(way, place);
    }

    @Override
    public Optional<AxisCourse> axes() {
        return Optional.of(new AxisCourse() {
            @Override
            public AxisValues at(double place) {
                return from.plus(way, place);
            }

            @Override
            public AxisValues rates(double place) {
                return way;
            }
        });
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
