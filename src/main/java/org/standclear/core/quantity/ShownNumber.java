package org.standclear.core.quantity;

import java.math.BigDecimal;
import java.math.RoundingMode;

/**
 * Numbers as people read them, rounded towards the unsafe side: what must stay small is rounded up, what must be large
 * enough is rounded down. Only for showing; comparisons are made before.
 */
public final class ShownNumber {

    private ShownNumber() {}

    /** Speeds, forces, distances needed, times: rounded up. */
    public static String up(double value, int decimals) {
        // what the comparison forgives must not show as a step up
        return shown(value - Math.abs(value) * Tolerance.RELATIVE, decimals, RoundingMode.CEILING);
    }

    /** Permitted speeds, distances there are: rounded down. */
    public static String down(double value, int decimals) {
        return shown(value + Math.abs(value) * Tolerance.RELATIVE, decimals, RoundingMode.FLOOR);
    }

    /** A number that somebody wrote, as it was written. */
    public static String plain(double value) {
        return trimmed(BigDecimal.valueOf(value));
    }

    private static String shown(double value, int decimals, RoundingMode mode) {
        if (!Double.isFinite(value)) {
            return "not known";
        }
        return trimmed(BigDecimal.valueOf(value).setScale(decimals, mode));
    }

    private static String trimmed(BigDecimal value) {
        BigDecimal plain = value.stripTrailingZeros();
        return plain.signum() == 0 ? "0" : plain.toPlainString();
    }
}
