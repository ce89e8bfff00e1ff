package org.standclear.cell;

import org.standclear.platform.ids.CellId;
import org.standclear.platform.ids.LabId;

/**
 * A robot cell as it stands now.
 *
 * @param stateReason why it is held, restricted or out of service; empty when in service
 * @param startOffsetMinutes how far after the half hour its slots begin, so that releases do not fall together
 */
public record Cell(
        CellId id,
        LabId lab,
        String name,
        CellState state,
        String stateReason,
        int currentVersion,
        int startOffsetMinutes) {}
