package org.standclear.booking.allocation.solver;

import java.time.Instant;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import org.standclear.core.allocation.FreeSlot;
import org.standclear.core.allocation.Problem;
import org.standclear.core.allocation.Span;

/**
 * Times in which some cell always has a slot, with a gap before and after: mostly days. No turn reaches over a gap, so
 * that nothing in one spell is in the way of anything in another.
 */
final class Spells {

    private Spells() {}

    static List<Span> of(Problem problem) {
        List<Span> spells = new ArrayList<>();
        List<Span> slots = problem.slots().stream()
                .map(FreeSlot::span)
                .sorted(Comparator.comparing(Span::from))
                .toList();
        Instant from = Instant.MIN;
        Instant until = Instant.MIN;
        for (Span slot : slots) {
            if (slot.from().isAfter(until)) {
                if (!until.equals(Instant.MIN)) {
                    spells.add(new Span(from, until));
                }
                from = slot.from();
            }
            until = slot.until().isAfter(until) ? slot.until() : until;
        }
        if (!slots.isEmpty()) {
            spells.add(new Span(from, until));
        }
        return spells;
    }
}
