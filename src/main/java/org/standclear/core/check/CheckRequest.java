package org.standclear.core.check;

import org.jspecify.annotations.Nullable;
import org.standclear.core.cell.CellDescription;
import org.standclear.core.limits.ContactTable;
import org.standclear.core.limits.ContactTableReader;
import org.standclear.core.limits.CourseLimits;
import org.standclear.core.program.Declaration;
import org.standclear.core.program.MotionSheetReader;
import org.standclear.core.program.ProgramReader;

/**
 * What to check against what.
 *
 * @param reader the reader of the program's format
 * @param declaration declared by form or by a file of its own; null when only the program declares
 */
public record CheckRequest(
        CellDescription cell,
        ProgramFile program,
        ProgramReader reader,
        @Nullable Declaration declaration,
        CourseLimits course,
        ContactTable contactTable) {

    /** A motion sheet under the cell's limits alone. */
    public static CheckRequest of(CellDescription cell, ProgramFile program) {
        return new CheckRequest(
                cell, program, new MotionSheetReader(), null, CourseLimits.NONE, ContactTableReader.shipped());
    }

    /** The same with a separate declaration, or none. */
    public CheckRequest declaring(@Nullable Declaration other) {
        return new CheckRequest(cell, program, reader, other, course, contactTable);
    }

    /** The same read by another reader. */
    public CheckRequest readBy(ProgramReader other) {
        return new CheckRequest(cell, program, other, declaration, course, contactTable);
    }

    /** The same under the limits of a course too. */
    public CheckRequest under(CourseLimits other) {
        return new CheckRequest(cell, program, reader, declaration, other, contactTable);
    }

    /** The same with the college's own table of body regions. */
    public CheckRequest with(ContactTable other) {
        return new CheckRequest(cell, program, reader, declaration, course, other);
    }
}
