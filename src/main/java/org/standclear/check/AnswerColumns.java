package org.standclear.check;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.stream.Collectors;
import org.jspecify.annotations.Nullable;
import org.standclear.check.AnswerDetails.Column;
import org.standclear.core.check.CheckAnswer;
import org.standclear.core.program.DeclarationField;
import org.standclear.core.program.Declared;
import org.standclear.core.program.Found;
import org.standclear.core.program.Step;
import org.standclear.core.quantity.Tolerance;

/** Puts what was declared beside what was found in the file. */
final class AnswerColumns {

    private static final Map<DeclarationField, String> ITEMS = Map.of(
            DeclarationField.POWER, "Power mode",
            DeclarationField.OVERRIDE, "Override",
            DeclarationField.MAX_TOOL_SPEED, "Fastest straight move, as written",
            DeclarationField.TOOL, "Tool",
            DeclarationField.PART_NAME, "Part by name",
            DeclarationField.PART, "Part",
            DeclarationField.LOOP, "Passes",
            DeclarationField.START, "Start");

    private AnswerColumns() {}

    static List<Column> of(CheckAnswer answer) {
        List<Column> columns = new ArrayList<>();
        for (DeclarationField field : DeclarationField.values()) {
            columns.add(field == DeclarationField.MAX_TOOL_SPEED ? speeds(answer) : column(answer, field));
        }
        return columns;
    }

    private static Column column(CheckAnswer answer, DeclarationField field) {
        Declared declared = answer.program().declared();
        Object value = field.in(declared.values());
        List<Found> found = declared.found(field);
        boolean agrees = value == null || found.stream().allMatch(one -> field.agree(value, one.value()));
        return new Column(item(field), declared(declared, field), found(field, found), agrees);
    }

    private static Column speeds(CheckAnswer answer) {
        DeclarationField field = DeclarationField.MAX_TOOL_SPEED;
        Declared declared = answer.program().declared();
        Step.Paced fastest = null;
        for (Step step : answer.program().plan().steps()) {
            if (step instanceof Step.Paced paced && (fastest == null || paced.speedMmS() > fastest.speedMmS())) {
                fastest = paced;
            }
        }
        Double most = declared.values().maxToolSpeedMmS();
        boolean agrees = fastest == null || most == null || Tolerance.isWithin(fastest.speedMmS(), most);
        String found = fastest == null ? null : field.shown(fastest.speedMmS()) + " (line " + fastest.line() + ")";
        return new Column(item(field), declared(declared, field), found, agrees);
    }

    private static @Nullable String declared(Declared declared, DeclarationField field) {
        Object value = field.in(declared.values());
        if (value == null) {
            return null;
        }
        Integer line = declared.lineOf(field);
        return field.shown(value) + (line == null ? "" : " (line " + line + ")");
    }

    private static @Nullable String found(DeclarationField field, List<Found> found) {
        return found.isEmpty()
                ? null
                : found.stream()
                        .limit(10)
                        .map(one -> field.shown(one.value()) + (one.line() > 0 ? " (line " + one.line() + ")" : ""))
                        .collect(Collectors.joining(", "));
    }

    private static String item(DeclarationField field) {
        return ITEMS.getOrDefault(field, field.word());
    }
}
