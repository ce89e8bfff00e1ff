package org.standclear.platform.numbers;

import java.util.Locale;
import org.jspecify.annotations.Nullable;

/**
 * One whole number that a lab sets for itself.
 *
 * @param name as the form sends it; its column has the same name in small letters
 * @param label the question on the form
 */
public record LabNumber(String name, String label, Range range, Said said) {

    /** The column it is kept in. */
    public String column() {
        return name.replaceAll("([A-Z])", "_$1").toLowerCase(Locale.ROOT);
    }

    /**
     * Between what it may be.
     *
     * @param notOver the name of another number that it may not be over, too; null when there is none
     * @param hint what the form says beside it
     */
    public record Range(int least, int most, @Nullable String notOver, String hint) {

        /** From the least to the most. */
        public static Range of(int least, int most) {
            return new Range(least, most, null, least + " to " + most);
        }

        /** The same, with more words beside it. */
        public Range and(String more) {
            return new Range(least, most, notOver, hint + more);
        }
    }

    /**
     * How a list of numbers says it in short.
     *
     * @param unit with what comes before it; empty for a count
     * @param zero instead of 0; empty when 0 is a number as any other
     */
    public record Said(String name, String unit, String zero) {

        /** A number with its unit. */
        public static Said of(String name, String unit) {
            return new Said(name, " " + unit, "");
        }

        /** A count. */
        public static Said of(String name) {
            return new Said(name, "", "");
        }

        /** The value as people read it. */
        public String value(int number) {
            return number == 0 && !zero.isEmpty() ? zero : number + unit;
        }
    }
}
