package org.standclear.desk.web;

import java.nio.charset.StandardCharsets;
import java.time.Instant;
import java.time.LocalDate;
import java.time.ZoneOffset;
import java.time.format.DateTimeFormatter;
import java.util.List;
import java.util.Locale;

/**
 * Writes dates as an iCalendar file (RFC 5545): lines end in CRLF and are folded after 75 octets (3.1), text is escaped
 * (3.3.11), DTSTAMP is in UTC (3.8.7.2), a whole day is a DATE whose end is the day after (3.6.1).
 */
final class DueCalendar {

    private static final int LONGEST_LINE = 75;
    private static final DateTimeFormatter STAMP =
            DateTimeFormatter.ofPattern("yyyyMMdd'T'HHmmss'Z'", Locale.ROOT).withZone(ZoneOffset.UTC);

    private final StringBuilder text = new StringBuilder();

    private DueCalendar() {}

    /**
     * One day.
     *
     * @param uid the same in every file, so that a calendar program takes it for the same
     */
    record Day(String uid, LocalDate on, String summary, String description) {}

    static byte[] of(String name, List<Day> days, Instant madeAt) {
        DueCalendar calendar = new DueCalendar();
        calendar.line("BEGIN:VCALENDAR");
        calendar.line("VERSION:2.0");
        calendar.line("PRODID:-//Standclear//What falls due//EN");
        calendar.line("NAME:" + escaped(name));
        for (Day day : days) {
            calendar.line("BEGIN:VEVENT");
            calendar.line("UID:" + day.uid());
            calendar.line("DTSTAMP:" + STAMP.format(madeAt));
            calendar.line("DTSTART;VALUE=DATE:" + DateTimeFormatter.BASIC_ISO_DATE.format(day.on()));
            calendar.line("DTEND;VALUE=DATE:"
                    + DateTimeFormatter.BASIC_ISO_DATE.format(day.on().plusDays(1)));
            calendar.line("SUMMARY:" + escaped(day.summary()));
            calendar.line("DESCRIPTION:" + escaped(day.description()));
            calendar.line("TRANSP:TRANSPARENT");
            calendar.line("END:VEVENT");
        }
        calendar.line("END:VCALENDAR");
        return calendar.text.toString().getBytes(StandardCharsets.UTF_8);
    }

    private static String escaped(String words) {
        return words.replace("\\", "\\\\")
                .replace(";", "\\;")
                .replace(",", "\\,")
                .replace("\r\n", "\\n")
                .replace("\n", "\\n")
                .replace("\r", "\\n");
    }

    /** Folds between characters, never inside one: a letter may be several octets. */
    private void line(String content) {
        int octets = 0;
        for (int at = 0; at < content.length(); ) {
            int letter = content.codePointAt(at);
            String one = Character.toString(letter);
            int size = one.getBytes(StandardCharsets.UTF_8).length;
            if (octets + size > LONGEST_LINE) {
                text.append("\r\n ");
                octets = 1;
            }
            text.append(one);
            octets += size;
            at += Character.charCount(letter);
        }
        text.append("\r\n");
    }
}
