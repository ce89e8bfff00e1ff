package org.standclear.core.text;

import java.util.function.DoublePredicate;

/** Which numbers a field takes; no field takes one beyond a million either way. */
public enum NumberRule {
    ANY(value -> true, "a number"),
    ABOVE_ZERO(value -> value > 0, "a number above 0"),
    NOT_BELOW_ZERO(value -> value >= 0, "a number from 0"),
    PERCENT(value -> value > 0 && value <= 100, "a percentage above 0 and at most 100");

    /** The largest number, either way. */
    public static final double LARGEST = 1_000_000;

    private final DoublePredicate accepted;
    private final String words;

    NumberRule(DoublePredicate accepted, String words) {
        this.accepted = accepted;
        this.words = words;
    }

    /** Whether the number may stand there; NaN and infinity never do. */
    public boolean accepts(double value) {
        return Math.abs(value) <= LARGEST && accepted.test(value);
    }

    /** What to write instead. */
    public String words() {
        return this == PERCENT ? words : words + ", 1000000 at most";
    }
}
