package org.standclear.core.limits;

import java.util.List;
import org.jspecify.annotations.Nullable;
import org.standclear.core.cell.BodyRegion;
import org.standclear.core.cell.CellDescription;
import org.standclear.core.cell.ContactLimit;

/** How fast the arm may touch each region that the cell lists, with the load that is declared. */
public final class ContactSpeeds {

    private static final double HALF = 0.5;

    private ContactSpeeds() {}

    /**
     * One region and its permitted speed.
     *
     * @param permittedMmS 0 where no contact is permitted
     */
    public record Permitted(BodyRegion region, double permittedMmS) {}

    /** In the order of the cell file; empty when the cell lists none or the mass of the part is not known. */
    public static List<Permitted> of(CheckedProgram program) {
        Double part = program.part().massKg();
        return part == null ? List.of() : with(program, part);
    }

    /** The speeds with a part of that mass; m_R = M/2 + m_L (ISO/TS 15066:2016 Annex A). */
    public static List<Permitted> with(CheckedProgram program, double partKg) {
        CellDescription cell = program.cell();
        @Nullable ContactLimit contact = cell.limits().contact();
        if (contact == null) {
            return List.of();
        }
        double mass = cell.armFacts().movingMassKg() * HALF + cell.fittedTool().massKg() + partKg;
        return contact.regions().stream()
                .map(region -> new Permitted(region, program.contactTable().permittedMmS(region, mass)))
                .toList();
    }
}
