package org.standclear.incident.web;

import java.util.Map;
import java.util.Optional;
import org.jspecify.annotations.Nullable;
import org.standclear.incident.IncidentSettings;
import org.standclear.platform.text.PlainText;

/**
 * The numbers of incidents as they were sent.
 *
 * @param seen the numbers that the form was filled in against
 */
record IncidentNumbersForm(
        @Nullable String formToken,
        @Nullable String seen,
        @Nullable String contactFormHours,
        @Nullable String injuryFormHours,
        @Nullable String effectCheckDays,
        @Nullable String reason) {

    static final int LONGEST_REASON = 400;

    static IncidentNumbersForm of(IncidentSettings now) {
        return new IncidentNumbersForm(
                null,
                seen(now),
                String.valueOf(now.contactFormHours()),
                String.valueOf(now.injuryFormHours()),
                String.valueOf(now.effectCheckDays()),
                "");
    }

    /** All numbers in one line, to see whether somebody changed one meanwhile. */
    static String seen(IncidentSettings numbers) {
        return numbers.contactFormHours() + " " + numbers.injuryFormHours() + " " + numbers.effectCheckDays();
    }

    /** The numbers; empty when one cannot be, which then stands in the errors by field. */
    Optional<IncidentSettings> read(Map<String, String> errors) {
        int contact = number("contactFormHours", contactFormHours, 1, 24, errors);
        int injury = number("injuryFormHours", injuryFormHours, 1, 72, errors);
        int effect = number("effectCheckDays", effectCheckDays, 7, 365, errors);
        if (PlainText.check(reason, LONGEST_REASON) instanceof PlainText.Refused refused) {
            errors.put("reason", refused.says());
        }
        return errors.isEmpty() ? Optional.of(new IncidentSettings(contact, injury, effect)) : Optional.empty();
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
