package org.standclear.core.motion;

import org.standclear.core.arm.Arm;

/** The part of the arm that goes fastest. */
public enum FastestPart {
    TOOL("tool"),
    /** The elbow of a scara; of a six-axis arm the fastest of its link ends. */
    ELBOW("elbow"),
    OVERHANG("overhang");

    private final String word;

    FastestPart(String word) {
        this.word = word;
    }

    /** As answers about programs for this arm write it. */
    public String word(Arm arm) {
        return this == ELBOW && arm.linkEnds() > 1 ? "link-end" : word;
    }
}
