package org.standclear.core.program;

import java.util.Map;
import org.standclear.core.arm.Elbow;
import org.standclear.core.arm.Posture;

/** The words by which files name which of several ways to reach a point is meant. */
public final class BranchWords {

    /** Of a scara's elbow. */
    public static final Map<String, Elbow> SIDES =
            Map.of(Elbow.LEFT.word(), Elbow.LEFT, Elbow.RIGHT.word(), Elbow.RIGHT);

    /** Of the shoulder of six axes. */
    public static final Map<String, Posture.Shoulder> SHOULDERS =
            Map.of("front", Posture.Shoulder.FRONT, "back", Posture.Shoulder.BACK);

    /** Of the elbow of six axes. */
    public static final Map<String, Posture.Bend> BENDS = Map.of("up", Posture.Bend.UP, "down", Posture.Bend.DOWN);

    /** Of the wrist of six axes. */
    public static final Map<String, Posture.Wrist> WRISTS =
            Map.of("plain", Posture.Wrist.PLAIN, "turned", Posture.Wrist.TURNED);

    private BranchWords() {}
}
