package org.standclear.core.allocation;

import java.util.List;

/**
 * When a turn can be.
 *
 * @param window of the section: from its first day to its due date
 * @param canCome when its people can come; spans that touch are joined
 * @param wishes in order, the dearest first
 */
public record Times(Span window, List<Span> canCome, List<Wish> wishes) {

    public Times {
        canCome = Span.joined(canCome);
        wishes = List.copyOf(wishes);
    }

    /** Whether its people can come for all of the span. */
    public boolean allow(Span span) {
        return canCome.stream().anyMatch(can -> can.holds(span));
    }

    /** How many dearer wishes the place passes over; as many as there are when it fulfils none. */
    public int wishesPassed(String cell, Span place) {
        for (int rank = 0; rank < wishes.size(); rank++) {
            if (wishes.get(rank).isFulfilledBy(cell, place)) {
                return rank;
            }
        }
        return wishes.size();
    }
}
