package org.standclear.core.allocation;

import org.jspecify.annotations.Nullable;

/** A time at which a cell or, when that is null, the whole lab is kept for something else. */
public record Closed(@Nullable String cell, Span span) {

    /** Whether it is in the way there and then. */
    public boolean hits(String where, Span when) {
        return (cell == null || cell.equals(where)) && span.overlaps(when);
    }
}
