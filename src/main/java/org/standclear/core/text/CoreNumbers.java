package org.standclear.core.text;

import java.util.OptionalDouble;

/** Numbers as the core schema of YAML 1.2 writes them. */
final class CoreNumbers {

    private static final int LONGEST = 400;

    private CoreNumbers() {}

    /** The number, infinity and NaN included; empty when the text is not a number. */
    static OptionalDouble parse(String text) {
        if (text.isEmpty() || text.length() > LONGEST) {
            return OptionalDouble.empty();
        }
        if (text.startsWith("0o")) {
            return integer(text.substring(2), 8);
        }
        if (text.startsWith("0x")) {
            return integer(text.substring(2), 16);
        }
        if (isDecimal(text)) {
            return OptionalDouble.of(Double.parseDouble(text));
        }
        return special(text);
    }

    /** Whether the text is a whole number in decimal digits. */
    static boolean isWhole(String text) {
        int sign = text.startsWith("-") || text.startsWith("+") ? 1 : 0;
        return text.length() > sign && text.length() <= LONGEST && digits(text, sign) == text.length();
    }

    private static OptionalDouble integer(String digits, int base) {
        double value = 0;
        for (int i = 0; i < digits.length(); i++) {
            char c = digits.charAt(i);
            int digit = c < 128 ? Character.digit(c, base) : -1;
            if (digit < 0) {
                return OptionalDouble.empty();
            }
            value = value * base + digit;
        }
        return digits.isEmpty() ? OptionalDouble.empty() : OptionalDouble.of(value);
    }

    /** [-+]? ( \. [0-9]+ | [0-9]+ ( \. [0-9]* )? ) ( [eE] [-+]? [0-9]+ )? */
    private static boolean isDecimal(String text) {
        int at = sign(text, 0);
        int whole = digits(text, at);
        int end = whole;
        if (whole < text.length() && text.charAt(whole) == '.') {
            end = digits(text, whole + 1);
            if (whole == at && end == whole + 1) {
                return false;
            }
        } else if (whole == at) {
            return false;
        }
        if (end == text.length()) {
            return true;
        }
        if (text.charAt(end) != 'e' && text.charAt(end) != 'E') {
            return false;
        }
        int exponent = sign(text, end + 1);
        return exponent < text.length() && digits(text, exponent) == text.length();
    }

    private static int sign(String text, int at) {
        return at < text.length() && (text.charAt(at) == '-' || text.charAt(at) == '+') ? at + 1 : at;
    }

    private static int digits(String text, int at) {
        int end = at;
        while (end < text.length() && text.charAt(end) >= '0' && text.charAt(end) <= '9') {
            end++;
        }
        return end;
    }

    private static OptionalDouble special(String text) {
        return switch (text) {
            case ".nan", ".NaN", ".NAN" -> OptionalDouble.of(Double.NaN);
            case ".inf", ".Inf", ".INF", "+.inf", "+.Inf", "+.INF" -> OptionalDouble.of(Double.POSITIVE_INFINITY);
            case "-.inf", "-.Inf", "-.INF" -> OptionalDouble.of(Double.NEGATIVE_INFINITY);
            default -> OptionalDouble.empty();
        };
    }
}
