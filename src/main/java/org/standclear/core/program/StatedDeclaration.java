package org.standclear.core.program;

import java.util.EnumMap;
import java.util.Map;

/**
 * A declaration as it stands somewhere, with the line of each field.
 *
 * @param where what holds it: "the sheet", "the declaration"
 */
public record StatedDeclaration(String where, Declaration values, Map<DeclarationField, Integer> lines) {

    public StatedDeclaration {
        lines = Map.copyOf(lines);
    }

    /** A declaration from a form or another file, of which no lines are known. */
    public static StatedDeclaration of(Declaration values) {
        return new StatedDeclaration("the declaration", values, new EnumMap<>(DeclarationField.class));
    }

    /** The line of a field, counted from 1; 0 when not known. */
    public int lineOf(DeclarationField field) {
        return lines.getOrDefault(field, 0);
    }
}
