package org.standclear.retention.web;

import java.time.Period;
import java.util.LinkedHashMap;
import java.util.Map;
import java.util.Optional;
import org.jspecify.annotations.Nullable;
import org.standclear.platform.text.PlainText;
import org.standclear.retention.KeepingRule;
import org.standclear.retention.KeepingTime;

/**
 * How long a kind of record shall be kept, as it was sent.
 *
 * @param seen number of the rule that the form was filled in against
 * @param how "time", or "good" for good
 */
record RuleForm(
        @Nullable String formToken,
        @Nullable String seen,
        @Nullable String how,
        @Nullable String amount,
        @Nullable String unit,
        @Nullable String yearEnd,
        @Nullable String reason) {

    private static final int LONGEST_REASON = 400;
    private static final int MOST_YEARS = 100;

    /** Filled in with what holds. */
    static RuleForm of(KeepingRule rule) {
        Period period = rule.time().period();
        String unit = "years";
        int amount = 0;
        if (period != null) {
            // a time was set in one unit; months and days before years, in case of a mixed one
            unit = period.getDays() > 0 ? "days" : period.getMonths() > 0 ? "months" : "years";
            amount = period.getDays() > 0
                    ? period.getDays()
                    : period.getMonths() > 0 ? (int) period.toTotalMonths() : period.getYears();
        }
        return new RuleForm(
                null,
                String.valueOf(rule.number()),
                period == null ? "good" : "time",
                period == null ? "" : String.valueOf(amount),
                unit,
                rule.time().fromYearEnd() ? "true" : "",
                "");
    }

    static Map<String, String> units() {
        Map<String, String> units = new LinkedHashMap<>();
        units.put("days", "days");
        units.put("months", "months");
        units.put("years", "years");
        return units;
    }

    static Map<String, String> ways() {
        Map<String, String> ways = new LinkedHashMap<>();
        ways.put("time", "For this time");
        ways.put("good", "For good: never disposed of");
        return ways;
    }

    int seenNumber() {
        return seen != null && seen.matches("[0-9]{1,6}") ? Integer.parseInt(seen) : -1;
    }

    /** The time; empty when it cannot be read, which then stands in the errors by field. */
    Optional<KeepingTime> read(Map<String, String> errors) {
        if (PlainText.check(reason, LONGEST_REASON) instanceof PlainText.Refused refused) {
            errors.put("reason", refused.says());
        }
        Period period = "good".equals(how) ? null : period(errors);
        if (!"good".equals(how) && !"time".equals(how)) {
            errors.put("how", "Choose one.");
        }
        return errors.isEmpty()
                ? Optional.of(new KeepingTime(period, period != null && "true".equals(yearEnd)))
                : Optional.empty();
    }

    private @Nullable Period period(Map<String, String> errors) {
        String typed = amount == null ? "" : amount.strip();
        int number = typed.matches("[0-9]{1,5}") ? Integer.parseInt(typed) : 0;
        Period period = "days".equals(unit)
                ? Period.ofDays(number)
                : "months".equals(unit) ? Period.ofMonths(number) : Period.ofYears(number);
        boolean tooLong = number > MOST_YEARS * ("days".equals(unit) ? 366 : "months".equals(unit) ? 12 : 1);
        if (!units().containsKey(unit == null ? "" : unit)) {
            errors.put("unit", "Choose days, months or years.");
        } else if (number < 1 || tooLong) {
            errors.put(
                    "amount",
                    "Write a whole number from 1, " + MOST_YEARS + " years at most; \"" + typed + "\" is not.");
        }
        return number < 1 ? null : period;
    }

    /** The reason as it is kept; only after it was read without an error. */
    String reasonKept() {
        return ((PlainText.Fine) PlainText.check(reason, LONGEST_REASON)).text();
    }

    /** To be posted again by the page that asks once more. */
    Map<String, String> hidden() {
        Map<String, String> fields = new LinkedHashMap<>();
        fields.put("seen", seen == null ? "" : seen);
        fields.put("how", how == null ? "" : how);
        fields.put("amount", amount == null ? "" : amount);
        fields.put("unit", unit == null ? "" : unit);
        fields.put("yearEnd", yearEnd == null ? "" : yearEnd);
        fields.put("reason", reason == null ? "" : reason);
        return fields;
    }
}
