package org.standclear.core.allocation;

import org.jspecify.annotations.Nullable;

/**
 * One turn at a cell that somebody asks for.
 *
 * @param operator who runs
 * @param partner who stands at the e-stop, for a pair; null when it needs an attendant
 * @param makeUp whether it makes up for a turn that was lost without the operator's fault
 * @param standing where it is booked now; null when it is not booked
 */
public record Turn(
        String id,
        String operator,
        @Nullable String partner,
        Work work,
        Times times,
        boolean makeUp,
        @Nullable Placed standing) {

    public Turn {
        if (operator.equals(partner)) {
            throw new IllegalArgumentException("the operator never attends the own run");
        }
    }

    /** Whether the place is another than where it is booked now. */
    boolean isMovedTo(String cell, Span span) {
        return standing != null
                && !(standing.cell().equals(cell) && standing.span().equals(span));
    }
}
