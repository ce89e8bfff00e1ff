package org.standclear.core.cell;

import java.util.Collections;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;

/**
 * The regions of the body that the arm may touch, and what follows when it is too fast for one.
 *
 * @param values the cell's own values of regions, which count before those of any table
 */
public record ContactLimit(List<BodyRegion> regions, Obligation rule, Map<BodyRegion, RegionValues> values) {

    public ContactLimit {
        regions = List.copyOf(regions);
        values = Collections.unmodifiableMap(new LinkedHashMap<>(values));
    }
}
