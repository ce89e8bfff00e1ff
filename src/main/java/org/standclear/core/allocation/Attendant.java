package org.standclear.core.allocation;

import java.util.List;
import java.util.Set;

/**
 * Somebody authorised to stand at an e-stop.
 *
 * @param cells those of the authorisation
 * @param free when the person can attend turns of others; none for who attends only the own partner; spans that touch are joined
 * @param helper whether the person can help where that is needed
 */
public record Attendant(String person, Set<String> cells, List<Span> free, boolean helper) {

    public Attendant {
        cells = Set.copyOf(cells);
        free = Span.joined(free);
    }

    /** Whether the person can stand there for somebody who is not the own partner. */
    public boolean canAttend(String cell, Span span, boolean helperNeeded) {
        return cells.contains(cell)
                && (helper || !helperNeeded)
                && free.stream().anyMatch(one -> one.holds(span));
    }
}
