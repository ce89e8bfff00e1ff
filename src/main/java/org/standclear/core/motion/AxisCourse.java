package org.standclear.core.motion;

import org.standclear.core.arm.AxisValues;

/** What the axes do during one move, at places of its path. */
public interface AxisCourse {

    /** Where the axes stand. */
    AxisValues at(double place);

    /** How fast they go while the place changes by 1. */
    AxisValues rates(double place);
}
