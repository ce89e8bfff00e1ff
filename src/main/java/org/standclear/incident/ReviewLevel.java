package org.standclear.incident;

/** How deep a review goes: by what could reasonably have happened, not only by what did. */
public enum ReviewLevel {
    READ("an instructor reads and answers it"),
    REVIEW("an instructor reviews it: causes in three branches, corrective actions"),
    FULL_REVIEW("as before, and the safety reviewer closes it");

    private final String words;

    ReviewLevel(String words) {
        this.words = words;
    }

    /** The level as people say it. */
    public String words() {
        return words;
    }

    /** Whether a cause tree and actions are asked for. */
    public boolean asksForCauses() {
        return this != READ;
    }
}
