package org.standclear.booking.web;

import java.time.DayOfWeek;
import java.time.format.TextStyle;
import java.util.EnumMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import org.jspecify.annotations.Nullable;
import org.standclear.booking.OpenPeriod;
import org.standclear.platform.text.PlainText;

/**
 * The weekly hours as they were sent.
 *
 * @param seen the hours that the form was filled in against
 * @param confirmed the bookings that the sender knows will be outside, by their ids
 */
record WeekForm(
        @Nullable String formToken,
        @Nullable String seen,
        @Nullable String monday,
        @Nullable String tuesday,
        @Nullable String wednesday,
        @Nullable String thursday,
        @Nullable String friday,
        @Nullable String saturday,
        @Nullable String sunday,
        @Nullable String reason,
        @Nullable String confirmed) {

    private static final int LONGEST_REASON = 400;

    static WeekForm of(Map<DayOfWeek, List<OpenPeriod>> week) {
        String[] texts = new String[7];
        for (DayOfWeek day : DayOfWeek.values()) {
            texts[day.ordinal()] = PeriodsText.write(week.getOrDefault(day, List.of()));
        }
        return new WeekForm(
                null, seen(week), texts[0], texts[1], texts[2], texts[3], texts[4], texts[5], texts[6], "", null);
    }

    /** The week in one line, to see whether somebody changed it meanwhile. */
    static String seen(Map<DayOfWeek, List<OpenPeriod>> week) {
        return String.join("; ", words(week).values());
    }

    /** By name of the day. */
    static Map<String, String> words(Map<DayOfWeek, List<OpenPeriod>> week) {
        Map<String, String> words = new LinkedHashMap<>();
        for (DayOfWeek day : DayOfWeek.values()) {
            words.put(
                    day.getDisplayName(TextStyle.FULL, Locale.ENGLISH),
                    PeriodsText.words(week.getOrDefault(day, List.of())));
        }
        return words;
    }

    /** By name of the field. */
    Map<String, @Nullable String> texts() {
        Map<String, @Nullable String> texts = new LinkedHashMap<>();
        texts.put("monday", monday);
        texts.put("tuesday", tuesday);
        texts.put("wednesday", wednesday);
        texts.put("thursday", thursday);
        texts.put("friday", friday);
        texts.put("saturday", saturday);
        texts.put("sunday", sunday);
        return texts;
    }

    /** The hours; empty when a field cannot be read, which then stands in the errors. */
    Optional<Map<DayOfWeek, List<OpenPeriod>>> read(Map<String, String> errors) {
        Map<DayOfWeek, List<OpenPeriod>> week = new EnumMap<>(DayOfWeek.class);
        texts().forEach((field, text) -> {
            try {
                List<OpenPeriod> periods = PeriodsText.read(text);
                if (!periods.isEmpty()) {
                    week.put(DayOfWeek.valueOf(field.toUpperCase(Locale.ROOT)), periods);
                }
            } catch (PeriodsText.UnreadableException unreadable) {
                errors.put(field, unreadable.says());
            }
        });
        if (PlainText.check(reason, LONGEST_REASON) instanceof PlainText.Refused refused) {
            errors.put("reason", refused.says());
        }
        return errors.isEmpty() ? Optional.of(week) : Optional.empty();
    }

    /** The reason as it is kept; only after it was read without an error. */
    String reasonKept() {
        return ((PlainText.Fine) PlainText.check(reason, LONGEST_REASON)).text();
    }

    /** What a page that asks once more has to send again. */
    Map<String, @Nullable String> again() {
        Map<String, @Nullable String> again = texts();
        again.put("seen", seen);
        again.put("reason", reason);
        return again;
    }
}
