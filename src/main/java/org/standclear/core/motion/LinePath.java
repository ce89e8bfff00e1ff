package org.standclear.core.motion;

import org.standclear.core.arm.ToolLine;
import org.standclear.core.geometry.Vector;

/** The tool point goes in a straight line; the place runs in mm. */
record LinePath(ToolLine line) implements ToolPath {

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
        return true;
    }

    @Override
    public int parts() {
        return 1;
    }

    @Override
    public double speedBound() {
        return 1;
    }
}
