package org.standclear.core.cell;

import java.util.List;
import org.jspecify.annotations.Nullable;
import org.standclear.core.geometry.Box;

/**
 * The limits of a cell; null or empty where the cell sets none.
 *
 * @param payloadKg null when it is not known
 * @param standLineMm the nearest a person stands, horizontally from axis 1
 */
public record CellLimits(
        Power power,
        double toolSpeedMmS,
        @Nullable Double movingPartSpeedMmS,
        Obligation movingPartRule,
        double overridePercent,
        @Nullable Double payloadKg,
        @Nullable Box space,
        List<KeepOut> keepOut,
        @Nullable ContactLimit contact,
        double standLineMm,
        @Nullable SeparationLimit separation) {

    public CellLimits {
        keepOut = List.copyOf(keepOut);
    }
}
