package org.standclear.booking.feed;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.StringReader;
import java.nio.charset.StandardCharsets;
import java.time.Instant;
import java.util.List;
import java.util.Objects;
import net.fortuna.ical4j.data.CalendarBuilder;
import net.fortuna.ical4j.model.Calendar;
import net.fortuna.ical4j.model.component.VEvent;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** What is written is read back by ical4j, an independent reader of RFC 5545. */
class CalendarTextTests {

    private static final Instant NOON = Instant.parse("2026-03-12T12:07:00Z");

    private static CalendarEvent event(String summary, Instant start, boolean cancelled) {
        return new CalendarEvent(
                "1@standclear", 3, NOON, start, start.plusSeconds(1800), summary, "", "Hall, room 114", cancelled, "");
    }

    private static VEvent readBack(String text) throws Exception {
        Calendar calendar = new CalendarBuilder().build(new StringReader(text));
        assertThat(calendar.validate().hasErrors()).isFalse();
        return calendar.<VEvent>getComponents("VEVENT").get(0);
    }

    private static String value(VEvent event, String property) {
        return event.getProperty(property).orElseThrow().getValue();
    }

    @Test
    void foldsAtSeventyFiveOctetsAndNeverInsideACharacter() throws Exception {
        String summary =
                "Größe und Maß, überall — €€€€ \uD83E\uDD16 ".repeat(12).strip();
        String text = CalendarText.of("Lab", List.of(event(summary, NOON, false)));

        assertThat(text.replace("\r\n", "")).doesNotContain("\r").doesNotContain("\n");
        for (String line : text.split("\r\n", -1)) {
            byte[] octets = line.getBytes(StandardCharsets.UTF_8);
            assertThat(octets.length).as(line).isLessThanOrEqualTo(75);
            assertThat(new String(octets, StandardCharsets.UTF_8))
                    .isEqualTo(line)
                    .doesNotContain("\uFFFD");
        }
        assertThat(value(readBack(text), "SUMMARY")).isEqualTo(summary);
    }

    @Test
    void escapesWhatHasAMeaning() throws Exception {
        String nasty = "a,b;c\\d\nBEGIN:VALARM";

        VEvent read = readBack(CalendarText.of("x", List.of(event(nasty, NOON, false))));

        assertThat(value(read, "SUMMARY")).isEqualTo(nasty);
        assertThat(read.getAlarms()).isEmpty();
        assertThat(value(read, "LOCATION")).isEqualTo("Hall, room 114");
    }

    @Test
    void leavesControlCharactersOut() throws Exception {
        VEvent read = readBack(CalendarText.of("x", List.of(event("a\u0000b\u000Bc\u007Fd\re\tf", NOON, false))));
        assertThat(value(read, "SUMMARY")).isEqualTo("a b c d e\tf");
    }

    @Test
    void saysWhatIsCancelledAndHowOftenItChanged() throws Exception {
        VEvent read = readBack(CalendarText.of("x", List.of(event("Avocet", NOON, true))));

        assertThat(value(read, "STATUS")).isEqualTo("CANCELLED");
        assertThat(value(read, "SEQUENCE")).isEqualTo("3");
        assertThat(value(read, "DTSTAMP")).isEqualTo("20260312T120700Z");
    }

    /**
     * The tz database's rules: Berlin goes forward on 29 March 2026 at 01:00 UTC and back on 25 October 2026 at 01:00 UTC;
     * Chicago forward on 8 March 2026 at 08:00 UTC and back on 1 November 2026 at 07:00 UTC.
     */
    @ParameterizedTest
    @CsvSource({
        "2026-03-29T00:59:00Z",
        "2026-03-29T01:00:00Z",
        "2026-10-25T00:30:00Z",
        "2026-10-25T01:30:00Z",
        "2026-03-08T08:00:00Z",
        "2026-11-01T06:30:00Z",
        "2026-11-01T07:30:00Z",
    })
    void keepsTheInstantOverAClockChange(Instant start) throws Exception {
        VEvent read = readBack(CalendarText.of("x", List.of(event("Avocet", start, false))));

        assertThat(Instant.from(Objects.requireNonNull(read.getDateTimeStart()).getDate()))
                .isEqualTo(start);
        assertThat(Instant.from(Objects.requireNonNull(read.getDateTimeEnd()).getDate()))
                .isEqualTo(start.plusSeconds(1800));
    }

    @Test
    void writesAnEmptyCalendar() {
        assertThat(CalendarText.of("Lab", List.of()))
                .startsWith("BEGIN:VCALENDAR\r\n")
                .endsWith("END:VCALENDAR\r\n");
    }
}
