package org.standclear.core.allocation;

import org.jspecify.annotations.Nullable;

/** A time that somebody would like, on one cell or, when that is null, on any. */
public record Wish(@Nullable String cell, Span span) {

    /** Whether a place fulfils it. */
    public boolean isFulfilledBy(String placeCell, Span place) {
        return (cell == null || cell.equals(placeCell)) && span.holds(place);
    }
}
