package org.standclear.core.program;

import org.jspecify.annotations.Nullable;
import org.standclear.core.cell.Power;

/**
 * What the student declares about a program; null where nothing is declared.
 *
 * @param part name of the part it handles, as the cell file lists it
 * @param start the point where the arm stands before the first step
 */
public record Declaration(
        @Nullable Power power,
        @Nullable Double overridePercent,
        @Nullable Double maxToolSpeedMmS,
        @Nullable String tool,
        @Nullable String part,
        @Nullable Double partKg,
        @Nullable Loop loop,
        @Nullable String start) {

    /** Declares nothing. */
    public static final Declaration NONE = new Declaration(null, null, null, null, null, null, null, null);

    /** Whether nothing is declared. */
    public boolean isEmpty() {
        return equals(NONE);
    }
}
