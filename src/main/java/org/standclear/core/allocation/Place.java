package org.standclear.core.allocation;

import java.util.List;

/**
 * A place that a turn could have by itself, whatever the others get.
 *
 * @param slots the slots that it takes, by their place in the problem's list
 * @param span from the first slot's start, as long as the turn takes
 */
public record Place(String cell, List<Integer> slots, Span span) {

    public Place {
        slots = List.copyOf(slots);
    }
}
