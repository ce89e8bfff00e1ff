package org.standclear.core.limits;

import org.jspecify.annotations.Nullable;

/**
 * What a rule found, whatever it makes of it; null where there is nothing to say.
 *
 * @param observed the value that was compared, not rounded
 * @param limit what it was compared with, not rounded
 * @param unit of both
 * @param limitFrom whose limit it is
 * @param step counted from 1
 * @param line of the program file, counted from 1
 * @param says for a person: what happened, which value, which limit, what to do
 */
public record Details(
        Check check,
        @Nullable Double observed,
        @Nullable Double limit,
        @Nullable String unit,
        @Nullable LimitSource limitFrom,
        @Nullable Integer step,
        @Nullable Integer line,
        String says) {

    /** Only the sentence. */
    public static Details of(Check check, String says) {
        return new Details(check, null, null, null, null, null, null, says);
    }

    /** With the value that was compared and its limit. */
    public Details comparing(@Nullable Double value, @Nullable Double with, String inUnit) {
        return new Details(check, told(value), told(with), inUnit, limitFrom, step, line, says);
    }

    /** A number that answers can carry. */
    private static @Nullable Double told(@Nullable Double value) {
        return value != null && Double.isFinite(value) ? value : null;
    }

    /** With whose limit it is. */
    public Details from(LimitSource source) {
        return new Details(check, observed, limit, unit, source, step, line, says);
    }

    /** With the line it is about. */
    public Details onLine(@Nullable Integer number) {
        return new Details(check, observed, limit, unit, limitFrom, step, number, says);
    }

    /** With the step it is about; step 0 is the start, which is none. */
    public Details atStep(int number, int onLine) {
        return new Details(check, observed, limit, unit, limitFrom, number == 0 ? null : number, onLine, says);
    }
}
