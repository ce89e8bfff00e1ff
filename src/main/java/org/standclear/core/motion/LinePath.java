package org.standclear.core.motion;

import org.standclear.core.arm.ToolWay;
import org.standclear.core.geometry.Vector;

/** The tool point goes in a straight line or an arc; the place runs in mm. */
record LinePath(ToolWay line, double ownRadius) implements ToolPath {

    /** A way of which nothing is known but that of the tool point. */
    LinePath(ToolWay line) {
        this(line, 0);
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
