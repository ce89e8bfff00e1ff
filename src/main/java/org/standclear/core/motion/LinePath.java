package org.standclear.core.motion;

import java.util.Optional;
import java.util.function.Supplier;
import org.jspecify.annotations.Nullable;
import org.standclear.core.arm.ToolWay;
import org.standclear.core.geometry.Vector;

/**
 * The tool point goes in a straight line or an arc; the place runs in mm.
 *
 * @param course makes what the axes do; null where they cannot follow
 */
record LinePath(ToolWay line, double ownRadius, @Nullable Supplier<AxisCourse> course) implements ToolPath {

    /** A way of which nothing is known but that of the tool point. */
    LinePath(ToolWay line) {
        this(line, 0, null);
    }

    @Override
    public double toolSpeed(double place) {
        return 1;
    }

    @Override
    public Optional<AxisCourse> axes() {
        return Optional.ofNullable(course).map(Supplier::get);
    }

    @Override
    public double length() {
        return line.length();
    }

    @Override
    public Vector at(double place) {
        return line.at(place).place();
    }

    @Override
    public boolean isStraight() {
        return line.isStraight();
    }

    @Override
    public int parts() {
        return line.parts();
    }

    @Override
    public double speedBound() {
        return 1;
    }
}
