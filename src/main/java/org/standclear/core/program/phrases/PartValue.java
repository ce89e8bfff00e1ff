package org.standclear.core.program.phrases;

import java.util.Map;
import java.util.Set;
import org.jspecify.annotations.Nullable;
import org.standclear.core.cell.Power;
import org.standclear.core.program.BranchWords;
import org.standclear.core.program.Loop;
import org.standclear.core.text.NumberRule;
import org.standclear.core.text.Words;

/** What the text of a part stands for. */
final class PartValue {

    static final Map<String, Power> POWERS = Map.of("reduced", Power.REDUCED, "full", Power.FULL);
    static final Set<String> ELBOWS = Set.of("left", "right", "up", "down");

    private static final String FOREVER = "forever";

    private PartValue() {}

    /** What is wrong with the text of a part; null when nothing is. */
    static @Nullable String wrong(Part part, String value) {
        String wanted = switch (part) {
            case POWER -> POWERS.containsKey(value) ? null : "reduced or full";
            case SHOULDER -> BranchWords.SHOULDERS.containsKey(value) ? null : "front or back";
            case ELBOW -> ELBOWS.contains(value) ? null : "left or right, or of six axes up or down";
            case WRIST -> BranchWords.WRISTS.containsKey(value) ? null : "plain or turned";
            case COUNT -> loop(value) == null ? "a whole number from 1 to " + Loop.MOST_PASSES + " or forever" : null;
            case PERCENT, ACCELERATION -> wrongNumber(value, NumberRule.PERCENT);
            case SPEED -> wrongNumber(value, NumberRule.ABOVE_ZERO);
            case TIME -> wrongNumber(value, NumberRule.NOT_BELOW_ZERO);
            case X, Y, Z, YAW, PITCH, ROLL, AXIS1, AXIS2, AXIS3, AXIS4, AXIS5, AXIS6 ->
                wrongNumber(value, NumberRule.ANY);
            default -> null;
        };
        return wanted == null ? null : part.word() + " is " + Words.quoted(value) + "; write " + wanted;
    }

    private static @Nullable String wrongNumber(String value, NumberRule rule) {
        return rule.accepts(number(value)) ? null : rule.words();
    }

    /** The number; not a number when it is written in another way. */
    static double number(String value) {
        return value.length() <= 40 && value.matches("[-+]?([0-9]+\\.?[0-9]*|\\.[0-9]+)")
                ? Double.parseDouble(value)
                : Double.NaN;
    }

    /** How often a loop goes round; null when the text does not say it. */
    static @Nullable Loop loop(String value) {
        if (value.equals(FOREVER)) {
            return Loop.FOREVER;
        }
        double passes = value.matches("[0-9]{1,9}") ? Double.parseDouble(value) : 0;
        return passes >= 1 && passes <= Loop.MOST_PASSES ? Loop.times((int) passes) : null;
    }
}
