package org.standclear.core.cell;

import java.util.List;

/** The regions of the body that the arm may touch, and what follows when it is too fast for one. */
public record ContactLimit(List<BodyRegion> regions, Obligation rule) {

    public ContactLimit {
        regions = List.copyOf(regions);
    }
}
