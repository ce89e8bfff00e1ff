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

    /**
     * The same for all turns that differ in nothing but their id, so that what holds of one need be found only once. One that
     * is booked already is of its own kind: it counts as moved by itself.
     */
    public Turn kind() {
        return standing == null ? new Turn("", operator, partner, work, times, makeUp, null) : this;
    }

    /** Whether the place is another than where it is booked now. */
    public boolean isMovedTo(String cell, Span span) {
        return standing != null
                && !(standing.cell().equals(cell) && standing.span().equals(span));
    }
}
