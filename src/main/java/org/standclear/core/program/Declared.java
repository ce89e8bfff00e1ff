package org.standclear.core.program;

import java.util.ArrayList;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import org.jspecify.annotations.Nullable;
import org.standclear.core.cell.Power;

/**
 * What is declared, and what was found beside it. The first statement of a field is the declared one; what the file
 * states after it counts as found and has to agree.
 *
 * @param lines of the declared fields in the program file; a field that is declared elsewhere has none
 */
public record Declared(Declaration values, Map<DeclarationField, Integer> lines, List<Found> found) {

    public Declared {
        lines = Map.copyOf(lines);
        found = List.copyOf(found);
    }

    /** Brings together a separate declaration, when there is one, and what the program file declares and states. */
    public static Declared of(@Nullable Declaration separate, MotionPlan plan) {
        List<StatedDeclaration> stated = new ArrayList<>();
        if (separate != null) {
            stated.add(StatedDeclaration.of(separate));
        }
        stated.addAll(plan.stated());
        Map<DeclarationField, Object> values = new EnumMap<>(DeclarationField.class);
        Map<DeclarationField, Integer> lines = new EnumMap<>(DeclarationField.class);
        List<Found> found = new ArrayList<>();
        for (StatedDeclaration statement : stated) {
            for (DeclarationField field : DeclarationField.values()) {
                Object value = field.in(statement.values());
                if (value == null) {
                    continue;
                }
                if (values.putIfAbsent(field, value) == null) {
                    lines.put(field, statement.lineOf(field));
                } else {
                    found.add(new Found(field, value, statement.lineOf(field), 1));
                }
            }
        }
        found.addAll(plan.found());
        return new Declared(declaration(values), lines, found);
    }

    private static Declaration declaration(Map<DeclarationField, Object> values) {
        return new Declaration(
                (Power) values.get(DeclarationField.POWER),
                (Double) values.get(DeclarationField.OVERRIDE),
                (Double) values.get(DeclarationField.MAX_TOOL_SPEED),
                (String) values.get(DeclarationField.TOOL),
                (String) values.get(DeclarationField.PART_NAME),
                (Double) values.get(DeclarationField.PART),
                (Loop) values.get(DeclarationField.LOOP),
                (String) values.get(DeclarationField.START));
    }

    /** What was found for a field, in the order of the file. */
    public List<Found> found(DeclarationField field) {
        return found.stream().filter(one -> one.field() == field).toList();
    }

    /** The line of a declared field; null when it is not declared in the program file. */
    public @Nullable Integer lineOf(DeclarationField field) {
        Integer line = lines.get(field);
        return line == null || line == 0 ? null : line;
    }
}
