package org.standclear.people.web;

import java.math.BigDecimal;
import org.jspecify.annotations.Nullable;

/** Limits of a course as people read and type them. */
final class LimitWords {

    private LimitWords() {}

    /** "37.5": no exponent, no zeros at the end. */
    static String number(double value) {
        BigDecimal plain = BigDecimal.valueOf(value).stripTrailingZeros();
        return plain.signum() == 0 ? "0" : plain.toPlainString();
    }

    /** "50 %". */
    static String override(double percent) {
        return number(percent) + " %";
    }

    /** "200 mm/s", or that the course sets none. */
    static String toolSpeed(@Nullable Double mmS) {
        return mmS == null ? "none of its own" : number(mmS) + " mm/s";
    }
}
