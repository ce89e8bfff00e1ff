package org.standclear.core.allocation;

/** What a plan is judged by; an earlier one is never given up for a later one. Less is better in each. */
public enum Level {
    MAKE_UPS("make-ups left out"),
    UNDER_MINIMUM("people under their minimum number of runs"),
    UNPLACED("turns left out"),
    UNFAIRNESS("largest less smallest share received"),
    MOVED("bookings moved"),
    WISHES("wishes passed over"),
    TOOL_CHANGES("tool changes");

    private final String words;

    Level(String words) {
        this.words = words;
    }

    /** What is counted, as people say it. */
    public String words() {
        return words;
    }
}
