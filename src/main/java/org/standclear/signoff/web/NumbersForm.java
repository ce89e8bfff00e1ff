package org.standclear.signoff.web;

import java.util.Map;
import java.util.Optional;
import org.jspecify.annotations.Nullable;
import org.standclear.platform.text.PlainText;
import org.standclear.signoff.BenchSettings;

/**
 * The numbers of the bench as they were sent.
 *
 * @param seen the numbers that the form was filled in against
 */
record NumbersForm(
        @Nullable String formToken,
        @Nullable String seen,
        @Nullable String releaseHoldsMinutes,
        @Nullable String sessionOpensMinutes,
        @Nullable String turnMinutes,
        @Nullable String restMinutes,
        @Nullable String firstRunMinutes,
        @Nullable String lookAfterStops,
        @Nullable String reason) {

    static final int LONGEST_REASON = 400;

    static NumbersForm of(BenchSettings now) {
        return new NumbersForm(
                null,
                seen(now),
                String.valueOf(now.releaseHoldsMinutes()),
                String.valueOf(now.sessionOpensMinutes()),
                String.valueOf(now.turnMinutes()),
                String.valueOf(now.restMinutes()),
                String.valueOf(now.firstRunMinutes()),
                String.valueOf(now.lookAfterStops()),
                "");
    }

    /** All numbers in one line, to see whether somebody changed one meanwhile. */
    static String seen(BenchSettings numbers) {
        return numbers.releaseHoldsMinutes() + " " + numbers.sessionOpensMinutes() + " " + numbers.turnMinutes() + " "
                + numbers.restMinutes() + " " + numbers.firstRunMinutes() + " " + numbers.lookAfterStops();
    }

    /** The numbers; empty when one cannot be, which then stands in the errors by field. */
    Optional<BenchSettings> read(Map<String, String> errors) {
        int holds = number("releaseHoldsMinutes", releaseHoldsMinutes, 1, 30, errors);
        int opens = number("sessionOpensMinutes", sessionOpensMinutes, 0, 60, errors);
        int turn = number("turnMinutes", turnMinutes, 1, 60, errors);
        int rest = number("restMinutes", restMinutes, 1, 60, errors);
        int firstRun = number("firstRunMinutes", firstRunMinutes, 1, 60, errors);
        int stops = number("lookAfterStops", lookAfterStops, 1, 5, errors);
        if (PlainText.check(reason, LONGEST_REASON) instanceof PlainText.Refused refused) {
            errors.put("reason", refused.says());
        }
        return errors.isEmpty()
                ? Optional.of(new BenchSettings(holds, opens, turn, rest, firstRun, stops))
                : Optional.empty();
    }

    /** The reason as it is kept; only after it was read without an error. */
    String reasonKept() {
        return ((PlainText.Fine) PlainText.check(reason, LONGEST_REASON)).text();
    }

    private static int number(String field, @Nullable String text, int least, int most, Map<String, String> errors) {
        String plain = text == null ? "" : text.strip();
        if (plain.matches("[0-9]{1,3}")) {
            int read = Integer.parseInt(plain);
            if (read >= least && read <= most) {
                return read;
            }
        }
        errors.put(field, "Write a whole number from " + least + " to " + most + "; \"" + plain + "\" is not.");
        return least;
    }
}
