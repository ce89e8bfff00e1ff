package org.standclear.signoff.rules;

import java.math.BigDecimal;
import java.util.regex.Pattern;

/** Numbers as people type and read them: digits with an optional fraction, no sign, no exponent. */
final class Numbers {

    private static final Pattern PLAIN = Pattern.compile("[0-9]{1,9}([.,][0-9]{1,6})?");

    private Numbers() {}

    static boolean isPlain(String typed) {
        return PLAIN.matcher(typed).matches();
    }

    static double value(String typed) {
        return new BigDecimal(typed.replace(',', '.')).doubleValue();
    }

    /** "50" for "50,0". */
    static String plain(String typed) {
        return shown(new BigDecimal(typed.replace(',', '.')));
    }

    static String shown(double value) {
        return shown(BigDecimal.valueOf(value));
    }

    private static String shown(BigDecimal value) {
        return value.signum() == 0 ? "0" : value.stripTrailingZeros().toPlainString();
    }
}
