package org.standclear.cell;

import java.time.Instant;
import java.util.List;
import org.standclear.platform.ids.CellId;
import org.standclear.platform.ids.PersonId;

/**
 * The fitted tool and the offset of its tool point, as one person read them at the robot before a return to service.
 *
 * @param offsetMm x, y and z
 */
public record ToolReading(CellId cell, PersonId by, Instant at, String toolCode, List<Double> offsetMm) {

    public ToolReading {
        offsetMm = List.copyOf(offsetMm);
        if (offsetMm.size() != 3 || toolCode.isBlank()) {
            throw new IllegalArgumentException("a reading has a tool code and three numbers");
        }
    }

    /** Whether it says the same as the version in force does. */
    boolean agreesWith(CellFacts facts) {
        return CellGates.sameCode(toolCode, facts.fittedTool()) && offsetMm.equals(facts.fittedOffsetMm());
    }
}
