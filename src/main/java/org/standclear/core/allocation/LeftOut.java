package org.standclear.core.allocation;

/**
 * Why a turn has no place.
 *
 * @param rule stable, for pages and tests
 * @param says what happened and who can mend it, without anything about other people
 */
public record LeftOut(String turn, Rule rule, String says) {

    /** What was in the way. */
    public enum Rule {
        TOOL,
        NEEDS,
        LENGTH,
        WINDOW,
        TIMES,
        CLOSED,
        BUSY,
        PARTNER,
        ATTENDANT,
        /** There were places, and others have them. */
        TAKEN,
        /** There is a free place, but nobody who could attend is free then. */
        ATTENDANTS_TAKEN,
        /** There is a free place, but its own people have another turn then. */
        OWN_TURNS,
        /** There is a free place that the search did not use: the plan is not the best one. */
        NOT_FOUND
    }
}
