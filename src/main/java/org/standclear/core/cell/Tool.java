package org.standclear.core.cell;

import java.util.Optional;
import org.standclear.core.geometry.Vector;
import org.standclear.core.quantity.ShownNumber;
import org.standclear.core.quantity.Tolerance;

/**
 * A tool as the cell file registers it.
 *
 * @param offset from the flange to the tool point, mm; a tool that hangs down has a z below 0
 * @param overhangMm the farthest part of tool and part from the tool point, in any direction
 * @param edges whether it has sharp edges or points
 */
public record Tool(String code, double massKg, Vector offset, double overhangMm, boolean edges) {

    /** What is not counted because the tool point lies farther aside than its overhang; empty when nothing is. */
    public Optional<String> uncounted() {
        double aside = offset.horizontal();
        return Tolerance.isOutside(aside - overhangMm)
                ? Optional.of("Flange and tool body of " + code + " stand " + ShownNumber.up(aside, 1)
                        + " mm out from the tool point and are not counted: give an overhang of at least that.")
                : Optional.empty();
    }
}
