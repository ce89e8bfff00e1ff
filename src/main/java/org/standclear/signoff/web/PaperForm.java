package org.standclear.signoff.web;

import java.time.DateTimeException;
import java.time.Instant;
import java.time.LocalDate;
import java.time.LocalTime;
import java.time.ZoneId;
import java.util.Map;
import java.util.Optional;
import java.util.UUID;
import org.jspecify.annotations.Nullable;
import org.standclear.platform.ids.BookingId;
import org.standclear.platform.ids.CellId;
import org.standclear.platform.ids.Id;
import org.standclear.platform.ids.PersonId;
import org.standclear.platform.text.PlainText;
import org.standclear.signoff.PaperCards.PaperCard;

/** A paper card as it was typed. */
record PaperForm(
        @Nullable String formToken,
        @Nullable String booking,
        @Nullable String date,
        @Nullable String time,
        @Nullable String operator,
        @Nullable String attendant,
        @Nullable String releaser,
        @Nullable String program,
        @Nullable String fingerprintEnd,
        @Nullable String power,
        @Nullable String override,
        @Nullable String sensitivity,
        @Nullable String toolCode,
        @Nullable String passes,
        @Nullable String happened) {

    static PaperForm empty() {
        return new PaperForm(null, null, null, null, null, null, null, null, null, null, null, null, null, null, null);
    }

    /** The card; empty when something cannot be read, which then stands in the errors by field. */
    Optional<PaperCard> read(CellId cell, ZoneId zone, PersonId by, Instant now, Map<String, String> errors) {
        Instant written = written(zone, errors);
        BookingId bookingId = booking(errors);
        PersonId operatorId = person("operator", operator, errors);
        PersonId attendantId = person("attendant", attendant, errors);
        PersonId releaserId = person("releaser", releaser, errors);
        String programTitle = text("program", program, 200, errors);
        String end = text("fingerprintEnd", fingerprintEnd, 4, errors).toLowerCase(java.util.Locale.ROOT);
        if (!errors.containsKey("fingerprintEnd") && !end.matches("[0-9a-f]{4}")) {
            errors.put("fingerprintEnd", "Four characters, 0 to 9 and a to f, as on the card.");
        }
        if (!"reduced".equals(power) && !"full".equals(power)) {
            errors.put("power", "Choose what the card says.");
        }
        double percent = percent(errors);
        String level = text("sensitivity", sensitivity, 40, errors);
        String tool = text("toolCode", toolCode, 60, errors);
        String made = text("passes", passes, 20, errors);
        String what = text("happened", happened, 1000, errors);
        return errors.isEmpty()
                ? Optional.of(new PaperCard(
                        Id.newValue(),
                        cell,
                        bookingId,
                        written,
                        operatorId,
                        attendantId,
                        releaserId,
                        programTitle,
                        end,
                        power == null ? "" : power,
                        percent,
                        level,
                        tool,
                        made,
                        what,
                        by,
                        now))
                : Optional.empty();
    }

    private Instant written(ZoneId zone, Map<String, String> errors) {
        try {
            LocalDate day = LocalDate.parse(date == null ? "" : date.strip());
            LocalTime at = LocalTime.parse(time == null ? "" : time.strip());
            return day.atTime(at).atZone(zone).toInstant();
        } catch (DateTimeException unreadable) {
            errors.put("time", "Write the day and the time that stand on the card, such as 2026-11-26 and 14:07.");
            return Instant.EPOCH;
        }
    }

    private @Nullable BookingId booking(Map<String, String> errors) {
        if (booking == null || booking.isBlank()) {
            return null;
        }
        try {
            return new BookingId(Id.parse(booking));
        } catch (IllegalArgumentException none) {
            errors.put("booking", "Choose the booking from the list, or none.");
            return null;
        }
    }

    private static PersonId person(String field, @Nullable String raw, Map<String, String> errors) {
        try {
            return new PersonId(Id.parse(raw == null ? "" : raw));
        } catch (IllegalArgumentException nobody) {
            errors.put(field, "Choose who signed as this on the card.");
            return new PersonId(new UUID(0, 0));
        }
    }

    private static String text(String field, @Nullable String raw, int most, Map<String, String> errors) {
        PlainText.Checked checked = PlainText.check(raw, most);
        if (checked instanceof PlainText.Fine fine) {
            return fine.text();
        }
        errors.put(field, ((PlainText.Refused) checked).says());
        return "";
    }

    private double percent(Map<String, String> errors) {
        String typed = override == null ? "" : override.strip().replace(',', '.');
        if (typed.matches("[0-9]{1,3}(\\.[0-9]{1,2})?")) {
            double read = Double.parseDouble(typed);
            if (read > 0 && read <= 100) {
                return read;
            }
        }
        errors.put("override", "An override is above 0 and at most 100 %.");
        return 0;
    }
}
