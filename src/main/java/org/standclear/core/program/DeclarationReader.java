package org.standclear.core.program;

import java.util.EnumMap;
import java.util.Map;
import org.jspecify.annotations.Nullable;
import org.standclear.core.cell.Power;
import org.standclear.core.text.Fields;
import org.standclear.core.text.NumberRule;
import org.standclear.core.text.Reading;
import org.standclear.core.text.YamlNode;
import org.standclear.core.text.YamlReader;

/** Reads a declaration: the fields of {@code declare}, and {@code start}, at the top level of a YAML text. */
public final class DeclarationReader {

    private static final Map<String, Power> POWERS =
            Map.of(Power.REDUCED.word(), Power.REDUCED, Power.FULL.word(), Power.FULL);

    private DeclarationReader() {}

    /** What the text declares. */
    public static Reading<Declaration> read(String text) {
        return Reading.of(() -> stated(YamlReader.read(text), "the declaration").values());
    }

    static StatedDeclaration stated(YamlNode node, String where) {
        Fields fields = Fields.of(node, "a declaration", DeclarationField.words());
        Declaration values = new Declaration(
                fields.has("power") ? fields.choice("power", POWERS) : null,
                fields.numberIfGiven("override-percent", NumberRule.PERCENT),
                fields.numberIfGiven("max-tool-speed-mm-s", NumberRule.ABOVE_ZERO),
                fields.textIfGiven("tool"),
                fields.textIfGiven("part"),
                fields.numberIfGiven("part-kg", NumberRule.NOT_BELOW_ZERO),
                loop(fields),
                fields.textIfGiven("start"));
        Map<DeclarationField, Integer> lines = new EnumMap<>(DeclarationField.class);
        for (DeclarationField field : DeclarationField.values()) {
            if (fields.has(field.word())) {
                lines.put(field, fields.lineOf(field.word()));
            }
        }
        return new StatedDeclaration(where, values, lines);
    }

    private static @Nullable Loop loop(Fields fields) {
        if (!fields.has("loop")) {
            return null;
        }
        if (fields.node("loop") instanceof YamlNode.Scalar scalar
                && scalar.text().equals("forever")) {
            return Loop.FOREVER;
        }
        return Loop.times(fields.wholeNumber("loop", 1, Loop.MOST_PASSES, "or forever"));
    }
}
