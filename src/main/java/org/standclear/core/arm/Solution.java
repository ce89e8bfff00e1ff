package org.standclear.core.arm;

import java.util.List;

/** What the axes have to do to bring the tool point somewhere. */
public sealed interface Solution {

    /**
     * These axis values bring it there.
     *
     * @param faults axes that would stand outside their range
     */
    record Found(AxisValues axes, List<RangeFault> faults) implements Solution {

        public Found {
            faults = List.copyOf(faults);
        }
    }

    /**
     * No axis values do.
     *
     * @param radius how far the flange would be from axis 1, mm
     * @param nearest the nearest it can be
     * @param farthest the farthest it can be
     */
    record OutOfReach(double radius, double nearest, double farthest) implements Solution {}

    /**
     * No axis values were found.
     *
     * @param why for a person, to follow the name of the point
     */
    record Unsolved(String why) implements Solution {}
}
