package org.standclear.booking.web;

import java.util.Map;
import java.util.Optional;
import org.jspecify.annotations.Nullable;
import org.standclear.booking.BookingSettings;
import org.standclear.platform.text.PlainText;

/**
 * The numbers of the booking rules as they were sent.
 *
 * @param seen the numbers that the form was filled in against
 */
record RulesForm(
        @Nullable String formToken,
        @Nullable String seen,
        @Nullable String slotMinutes,
        @Nullable String horizonDays,
        @Nullable String futurePerPerson,
        @Nullable String weekPerPerson,
        @Nullable String perAssignment,
        @Nullable String lateReleaseHours,
        @Nullable String lateCancelMinutes,
        @Nullable String checkInOpensMinutes,
        @Nullable String graceMinutes,
        @Nullable String offerMinutes,
        @Nullable String confirmMinutes,
        @Nullable String reason) {

    static final int LONGEST_REASON = 400;

    static RulesForm of(BookingSettings now) {
        return new RulesForm(
                null,
                seen(now),
                String.valueOf(now.slotMinutes()),
                String.valueOf(now.horizonDays()),
                String.valueOf(now.futurePerPerson()),
                String.valueOf(now.weekPerPerson()),
                String.valueOf(now.perAssignment()),
                String.valueOf(now.lateReleaseHours()),
                String.valueOf(now.lateCancelMinutes()),
                String.valueOf(now.checkInOpensMinutes()),
                String.valueOf(now.graceMinutes()),
                String.valueOf(now.offerMinutes()),
                String.valueOf(now.confirmMinutes()),
                "");
    }

    /** All numbers in one line, to see whether somebody changed one meanwhile. */
    static String seen(BookingSettings numbers) {
        return numbers.slotMinutes() + " " + numbers.horizonDays() + " " + numbers.futurePerPerson() + " "
                + numbers.weekPerPerson() + " " + numbers.perAssignment() + " " + numbers.lateReleaseHours() + " "
                + numbers.lateCancelMinutes() + " " + numbers.checkInOpensMinutes() + " " + numbers.graceMinutes()
                + " " + numbers.offerMinutes() + " " + numbers.confirmMinutes();
    }

    /** The numbers; empty when one cannot be, which then stands in the errors by field. */
    Optional<BookingSettings> read(Map<String, String> errors) {
        int slot = number("slotMinutes", slotMinutes, 10, 240, errors);
        int horizon = number("horizonDays", horizonDays, 1, 180, errors);
        int future = number("futurePerPerson", futurePerPerson, 0, 100, errors);
        int week = number("weekPerPerson", weekPerPerson, 0, 100, errors);
        int assignment = number("perAssignment", perAssignment, 0, 100, errors);
        int release = number("lateReleaseHours", lateReleaseHours, 0, 336, errors);
        int cancel = number("lateCancelMinutes", lateCancelMinutes, 0, 2880, errors);
        int opens = number("checkInOpensMinutes", checkInOpensMinutes, 0, 240, errors);
        int grace = number("graceMinutes", graceMinutes, 1, errors.containsKey("slotMinutes") ? 240 : slot, errors);
        int offer = number("offerMinutes", offerMinutes, 3, 240, errors);
        int confirm = number("confirmMinutes", confirmMinutes, 0, 2880, errors);
        if (PlainText.check(reason, LONGEST_REASON) instanceof PlainText.Refused refused) {
            errors.put("reason", refused.says());
        }
        return errors.isEmpty()
                ? Optional.of(new BookingSettings(
                        slot, horizon, future, week, assignment, release, cancel, opens, grace, offer, confirm))
                : Optional.empty();
    }

    /** The reason as it is kept; only after it was read without an error. */
    String reasonKept() {
        return ((PlainText.Fine) PlainText.check(reason, LONGEST_REASON)).text();
    }

    private static int number(String field, @Nullable String text, int least, int most, Map<String, String> errors) {
        String plain = text == null ? "" : text.strip();
        if (plain.matches("[0-9]{1,5}")) {
            int read = Integer.parseInt(plain);
            if (read >= least && read <= most) {
                return read;
            }
        }
        errors.put(field, "Write a whole number from " + least + " to " + most + "; \"" + plain + "\" is not.");
        return least;
    }
}
