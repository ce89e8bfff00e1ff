package org.standclear.core.limits;

import static org.standclear.core.quantity.ShownNumber.plain;

import java.util.List;
import java.util.Optional;
import org.jspecify.annotations.Nullable;
import org.standclear.core.cell.CellDescription;
import org.standclear.core.cell.Part;
import org.standclear.core.program.Declaration;
import org.standclear.core.quantity.Tolerance;
import org.standclear.core.text.Words;

/**
 * The part that a program carries: declared by its mass, by a name that the cell file lists, or by both.
 *
 * @param massKg null while it is not known
 * @param why what is missing; empty when nothing is
 * @param remark what the mass rests on where that is not plain from the declaration; empty otherwise
 */
public record CarriedPart(@Nullable Double massKg, String why, String remark) {

    private static final int NAMED = 20;

    /** The part as declared and as the cell file lists it. Where both give a mass the heavier counts. */
    public static CarriedPart of(Declaration declared, CellDescription cell) {
        String name = declared.part();
        Double typed = declared.partKg();
        if (name == null) {
            return typed == null ? notDeclared(cell) : new CarriedPart(typed, "", "");
        }
        Optional<Part> listed =
                cell.parts().stream().filter(part -> part.name().equals(name)).findFirst();
        if (listed.isEmpty()) {
            return new CarriedPart(null, "The cell file lists no part " + Words.quoted(name) + ". " + choose(cell), "");
        }
        double mass = listed.get().massKg();
        String from = " The cell file lists " + Words.quoted(name) + " with " + plain(mass) + " kg";
        if (typed == null || Tolerance.isSame(typed, mass)) {
            return new CarriedPart(mass, "", from + ".");
        }
        return new CarriedPart(
                Math.max(typed, mass),
                "",
                from + ", the declaration says " + plain(typed) + " kg: the heavier counts.");
    }

    private static CarriedPart notDeclared(CellDescription cell) {
        String or = cell.parts().isEmpty() ? "" : ", or part with a name that the cell file lists";
        return new CarriedPart(
                null, "No part is declared. Declare part-kg" + or + "; write 0 when nothing is carried.", "");
    }

    private static String choose(CellDescription cell) {
        List<String> names = cell.parts().stream().map(Part::name).limit(NAMED).toList();
        return names.isEmpty()
                ? "It lists none: declare part-kg, or ask whoever keeps the cell file to list it."
                : "It lists " + Words.allOf(names) + ".";
    }
}
