package org.standclear.core.cell;

/** Regions of the body as ISO/TS 15066:2016 Annex A groups them. */
public enum BodyRegion {
    SKULL_AND_FOREHEAD("skull-and-forehead"),
    FACE("face"),
    NECK("neck"),
    BACK_AND_SHOULDERS("back-and-shoulders"),
    CHEST("chest"),
    ABDOMEN("abdomen"),
    PELVIS("pelvis"),
    UPPER_ARM_AND_ELBOW("upper-arm-and-elbow"),
    LOWER_ARM_AND_WRIST("lower-arm-and-wrist"),
    HAND_AND_FINGERS("hand-and-fingers"),
    THIGH_AND_KNEE("thigh-and-knee"),
    LOWER_LEG("lower-leg");

    private final String word;

    BodyRegion(String word) {
        this.word = word;
    }

    /** As files write it. */
    public String word() {
        return word;
    }
}
