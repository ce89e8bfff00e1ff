package org.standclear.desk.web;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.StringReader;
import java.nio.charset.StandardCharsets;
import java.time.Instant;
import java.time.LocalDate;
import java.util.List;
import net.fortuna.ical4j.data.CalendarBuilder;
import net.fortuna.ical4j.model.Calendar;
import net.fortuna.ical4j.model.Property;
import net.fortuna.ical4j.model.component.VEvent;
import org.junit.jupiter.api.Test;

/** RFC 5545, read back by an independent reader (ical4j). */
class DueCalendarTests {

    private static final Instant MADE = Instant.parse("2026-11-26T14:07:09Z");
    private static final String LONG = "Überprüfung der Zelle, in größter Ausführlichkeit; mit \\ und\nzweiter Zeile, "
            + "so lang, dass sie gefaltet wird, und mit einem Zeichen jenseits der Ebene 0: \uD83E\uDD16";

    private static String text(List<DueCalendar.Day> days) {
        return new String(DueCalendar.of("Tern Hall, bench; A", days, MADE), StandardCharsets.UTF_8);
    }

    private static DueCalendar.Day day(String summary, String description) {
        return new DueCalendar.Day("inspection-1@standclear", LocalDate.of(2026, 11, 30), summary, description);
    }

    @Test
    void isReadBackByAnIndependentReader() throws Exception {
        Calendar read =
                new CalendarBuilder().build(new StringReader(text(List.of(day("Avocet: inspection due", LONG)))));
        List<VEvent> events = read.getComponents("VEVENT");
        assertThat(events).hasSize(1);
        VEvent event = events.get(0);
        assertThat(value(event, "UID")).isEqualTo("inspection-1@standclear");
        assertThat(value(event, "SUMMARY")).isEqualTo("Avocet: inspection due");
        assertThat(value(event, "DESCRIPTION")).isEqualTo(LONG);
        assertThat(value(event, "DTSTART")).isEqualTo("20261130");
        assertThat(value(event, "DTEND")).as("the day after, 3.6.1").isEqualTo("20261201");
        assertThat(value(event, "DTSTAMP")).as("UTC, 3.8.7.2").isEqualTo("20261126T140709Z");
        read.validate();
    }

    private static String value(VEvent event, String name) {
        return event.getProperty(name)
                .map(property -> ((Property) property).getValue())
                .orElseThrow();
    }

    @Test
    void foldsAfter75OctetsAndEndsLinesInCrLf() {
        String text = text(List.of(day("Avocet", LONG)));
        assertThat(text.replace("\r\n", "")).doesNotContain("\n").doesNotContain("\r");
        assertThat(text).endsWith("END:VCALENDAR\r\n");
        List<String> lines = List.of(text.split("\r\n"));
        assertThat(lines)
                .allSatisfy(line -> assertThat(line.getBytes(StandardCharsets.UTF_8).length)
                        .as(line)
                        .isLessThanOrEqualTo(75));
        assertThat(lines).anyMatch(line -> line.startsWith(" "));
        assertThat(text.replace("\r\n ", "")).contains("\\; mit \\\\ und\\nzweiter Zeile\\,");
    }

    @Test
    void foldsExactlyAt75() {
        // DESCRIPTION: is 12 octets
        String at = text(List.of(day("A", "x".repeat(63))));
        assertThat(at).contains("DESCRIPTION:" + "x".repeat(63) + "\r\nTRANSP");
        String over = text(List.of(day("A", "x".repeat(64))));
        assertThat(over).contains("DESCRIPTION:" + "x".repeat(63) + "\r\n x\r\nTRANSP");
    }

    @Test
    void writesAnEmptyCalendar() throws Exception {
        assertThat(new CalendarBuilder()
                        .build(new StringReader(text(List.of())))
                        .getComponents("VEVENT"))
                .isEmpty();
    }
}
