package org.standclear.core.cell;

import java.util.List;
import org.standclear.core.arm.Arm;

/**
 * One version of a robot cell: its arm, the tools it knows, the tool fitted and the limits.
 *
 * @param parts that are handled here, as far as the file lists them
 * @param fittedTool one of the tools; offset, overhang and mass are always those of this one
 */
public record CellDescription(
        String name,
        int version,
        Arm arm,
        ArmFacts armFacts,
        List<Tool> tools,
        Tool fittedTool,
        List<Part> parts,
        CellLimits limits) {

    public CellDescription {
        tools = List.copyOf(tools);
        parts = List.copyOf(parts);
        if (!tools.contains(fittedTool)) {
            throw new IllegalArgumentException("the fitted tool is one of the cell's tools");
        }
    }
}
