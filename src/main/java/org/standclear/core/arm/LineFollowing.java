package org.standclear.core.arm;

import java.util.OptionalDouble;

/** What the axes do while the tool point goes along a straight line or an arc. */
public interface LineFollowing {

    /** After how many mm no axis values bring the tool point on; empty when the whole way is in reach. */
    OptionalDouble leavesReach();

    /**
     * The axis values after so many mm.
     *
     * @param near where the axes stood shortly before: they follow without a jump
     */
    AxisValues at(double mm, AxisValues near);

    /** How fast the axes go there, per mm of the way; near a singular place the rates grow without bound. */
    AxisValues ratesPerMm(double mm);
}
