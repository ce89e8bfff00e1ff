package org.standclear.core.allocation;

import java.util.Set;

/**
 * What a turn takes.
 *
 * @param tool that the assignment is done with
 * @param minutes how long the turn is; longer than a slot, it takes the next slot of the cell too
 * @param needs features that the bench has to have
 * @param helper whether the attendant has to be a helper
 */
public record Work(String tool, int minutes, Set<String> needs, boolean helper) {

    public Work {
        needs = Set.copyOf(needs);
        if (minutes < 1) {
            throw new IllegalArgumentException("a turn takes at least a minute");
        }
    }
}
