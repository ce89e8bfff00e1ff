package org.standclear.booking.feed;

import java.nio.charset.StandardCharsets;
import java.time.Instant;
import java.time.ZoneOffset;
import java.time.format.DateTimeFormatter;
import java.util.List;
import java.util.Locale;
import java.util.regex.Pattern;

/**
 * Writes a calendar as RFC 5545 wants it: CRLF, lines of at most 75 octets that never break inside a character (3.1), text
 * with its escapes (3.3.11). All times are in UTC (3.3.5, form 2), so that no change of clocks can move an event.
 */
final class CalendarText {

    private static final int LONGEST_LINE = 75;
    private static final Pattern CONTROL = Pattern.compile("[\\x00-\\x08\\x0B-\\x1F\\x7F]");
    private static final DateTimeFormatter UTC =
            DateTimeFormatter.ofPattern("yyyyMMdd'T'HHmmss'Z'", Locale.ROOT).withZone(ZoneOffset.UTC);

    private final StringBuilder text = new StringBuilder();

    private CalendarText() {}

    static String of(String name, List<CalendarEvent> events) {
        CalendarText calendar = new CalendarText();
        calendar.line("BEGIN", "VCALENDAR");
        calendar.line("VERSION", "2.0");
        calendar.line("PRODID", "-//Standclear//Calendar feed//EN");
        calendar.line("CALSCALE", "GREGORIAN");
        calendar.line("NAME", escaped(name));
        calendar.line("X-WR-CALNAME", escaped(name));
        calendar.line("REFRESH-INTERVAL;VALUE=DURATION", "PT15M");
        events.forEach(calendar::event);
        calendar.line("END", "VCALENDAR");
        return calendar.text.toString();
    }

    private void event(CalendarEvent event) {
        line("BEGIN", "VEVENT");
        line("UID", event.uid());
        // without a METHOD it says when this version was made (3.8.7.2)
        line("DTSTAMP", utc(event.changedAt()));
        line("LAST-MODIFIED", utc(event.changedAt()));
        line("SEQUENCE", String.valueOf(event.sequence()));
        line("DTSTART", utc(event.start()));
        line("DTEND", utc(event.end()));
        line("SUMMARY", escaped(event.summary()));
        if (!event.description().isEmpty()) {
            line("DESCRIPTION", escaped(event.description()));
        }
        line("LOCATION", escaped(event.location()));
        if (!event.url().isEmpty()) {
            line("URL", event.url());
        }
        line("STATUS", event.cancelled() ? "CANCELLED" : "CONFIRMED");
        line("TRANSP", event.cancelled() ? "TRANSPARENT" : "OPAQUE");
        line("END", "VEVENT");
    }

    static String utc(Instant at) {
        return UTC.format(at);
    }

    /** Control characters but a line's end are no text there (3.3.11). */
    static String escaped(String raw) {
        return CONTROL.matcher(raw.replace("\r\n", "\n"))
                .replaceAll(" ")
                .replace("\\", "\\\\")
                .replace(";", "\\;")
                .replace(",", "\\,")
                .replace("\n", "\\n");
    }

    private void line(String name, String value) {
        int octets = 0;
        String whole = name + ":" + value;
        for (int i = 0; i < whole.length(); ) {
            int character = whole.codePointAt(i);
            String one = Character.toString(character);
            int wide = one.getBytes(StandardCharsets.UTF_8).length;
            if (octets + wide > LONGEST_LINE) {
                text.append("\r\n ");
                octets = 1;
            }
            text.append(one);
            octets += wide;
            i += Character.charCount(character);
        }
        text.append("\r\n");
    }
}
