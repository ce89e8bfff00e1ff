package org.standclear.core.program;

import java.util.Arrays;
import java.util.List;
import java.util.function.Function;
import org.jspecify.annotations.Nullable;
import org.standclear.core.cell.Power;
import org.standclear.core.quantity.ShownNumber;
import org.standclear.core.quantity.Tolerance;

/** The fields of a declaration, by the names that files and forms use. */
public enum DeclarationField {
    POWER("power", "", Declaration::power),
    OVERRIDE("override-percent", " %", Declaration::overridePercent),
    MAX_TOOL_SPEED("max-tool-speed-mm-s", " mm/s", Declaration::maxToolSpeedMmS),
    TOOL("tool", "", Declaration::tool),
    PART_NAME("part", "", Declaration::part),
    PART("part-kg", " kg", Declaration::partKg),
    LOOP("loop", "", Declaration::loop),
    START("start", "", Declaration::start);

    private final String word;
    private final String unit;
    private final Function<Declaration, @Nullable Object> value;

    DeclarationField(String word, String unit, Function<Declaration, @Nullable Object> value) {
        this.word = word;
        this.unit = unit;
        this.value = value;
    }

    /** As files write it. */
    public String word() {
        return word;
    }

    /** Its value in a declaration; null when not declared. */
    public @Nullable Object in(Declaration declaration) {
        return value.apply(declaration);
    }

    /** Whether two values of this field say the same. */
    public boolean agree(Object a, Object b) {
        return a instanceof Double x && b instanceof Double y ? Tolerance.isSame(x, y) : a.equals(b);
    }

    /** A value as people read it. */
    public String shown(Object value) {
        if (value instanceof Power power) {
            return power.word();
        }
        if (value instanceof Loop loop) {
            return loop.word();
        }
        return value instanceof Double number ? ShownNumber.plain(number) + unit : value.toString();
    }

    /** The names of all fields. */
    static List<String> words() {
        return Arrays.stream(values()).map(DeclarationField::word).toList();
    }
}
