package org.standclear.core.motion;

import java.util.Optional;
import org.standclear.core.geometry.Vector;

/** The way of the tool point during one move. */
public interface ToolPath {

    /** Its length in the unit of its move's profile: mm of a line, 1 for a joint move. */
    double length();

    /** Where the tool point is at a place of the path, from 0 to the length. */
    Vector at(double place);

    /** How far the tool point goes there while the place changes by 1, mm. */
    double toolSpeed(double place);

    /** What the axes do meanwhile; empty where they cannot follow. Made anew each time, so keep it while reading it. */
    Optional<AxisCourse> axes();

    /** Whether the tool point goes in a straight line. */
    boolean isStraight();

    /** Into how many equal parts the path is cut so that it bends only a little in each. */
    int parts();

    /** The tool point never goes farther than this while the place changes by 1, mm. */
    double speedBound();

    /** How far the arm's own parts come from axis 1 horizontally on the way, mm; 0 when they need not be looked at. */
    default double ownRadius() {
        return 0;
    }
}
