package org.standclear.booking.allocation.solver;

import org.standclear.core.allocation.Place;
import org.standclear.core.allocation.Span;

/** A place in any problem: in a part of one, its slots have other numbers. */
record Where(String cell, Span span) {

    static Where of(Place place) {
        return new Where(place.cell(), place.span());
    }
}
