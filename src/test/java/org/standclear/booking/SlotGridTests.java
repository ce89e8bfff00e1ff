package org.standclear.booking;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.time.Duration;
import java.time.Instant;
import java.time.LocalDate;
import java.time.LocalTime;
import java.time.ZoneId;
import java.time.format.DateTimeFormatter;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.standclear.platform.ids.CellId;

class SlotGridTests {

    private static final CellId CELL = CellId.next();
    private static final Duration HALF_HOUR = Duration.ofMinutes(30);
    private static final DateTimeFormatter WITH_OFFSET = DateTimeFormatter.ofPattern("HH:mm xxx");

    private static List<OpenPeriod> open(String opens, String closes) {
        return List.of(new OpenPeriod(LocalTime.parse(opens), LocalTime.parse(closes)));
    }

    private static List<String> starts(ZoneId zone, String day, List<OpenPeriod> periods, int offset) {
        return new SlotGrid(zone, HALF_HOUR)
                .slots(CELL, LocalDate.parse(day), periods, offset).stream()
                        .map(slot -> WITH_OFFSET.format(slot.start().atZone(zone)))
                        .toList();
    }

    private static void lastHalfAnHourEachAndDoNotOverlap(ZoneId zone, String day, int offset) {
        List<Slot> slots =
                new SlotGrid(zone, HALF_HOUR).slots(CELL, LocalDate.parse(day), open("00:00", "23:59"), offset);
        Instant before = Instant.MIN;
        for (Slot slot : slots) {
            assertThat(Duration.between(slot.start(), slot.end())).isEqualTo(HALF_HOUR);
            assertThat(slot.start()).isAfterOrEqualTo(before);
            assertThat(slot.start().atZone(zone).getMinute() % 30).isEqualTo(offset);
            before = slot.end();
        }
    }

    @Test
    void staggersTheStartsOfCells() {
        ZoneId utc = ZoneId.of("UTC");
        assertThat(starts(utc, "2026-03-12", open("09:00", "10:30"), 0))
                .containsExactly("09:00 +00:00", "09:30 +00:00", "10:00 +00:00");
        assertThat(starts(utc, "2026-03-12", open("09:00", "10:30"), 7))
                .containsExactly("09:07 +00:00", "09:37 +00:00");
        assertThat(starts(utc, "2026-03-12", open("09:10", "10:30"), 7)).containsExactly("09:37 +00:00");
    }

    @Test
    void fillsEveryPeriodOfADayWithABreak() {
        List<OpenPeriod> periods = List.of(
                new OpenPeriod(LocalTime.of(9, 0), LocalTime.of(10, 0)),
                new OpenPeriod(LocalTime.of(13, 15), LocalTime.of(14, 0)));
        assertThat(starts(ZoneId.of("UTC"), "2026-03-12", periods, 15)).containsExactly("09:15 +00:00", "13:15 +00:00");
    }

    /** Berlin 2026: 29 March 02:00 to 03:00, 25 October 03:00 back to 02:00 (EU directive 2000/84/EC, last Sundays). */
    @Test
    void hasNoSlotInTheGapOfSpring() {
        assertThat(starts(ZoneId.of("Europe/Berlin"), "2026-03-29", open("01:00", "04:00"), 7))
                .containsExactly("01:07 +01:00", "01:37 +01:00", "03:07 +02:00");
        assertThat(starts(ZoneId.of("Europe/Berlin"), "2026-03-29", open("02:15", "04:00"), 0))
                .containsExactly("03:30 +02:00");
    }

    @Test
    void tellsTheSlotsOfTheDoubleHourApart() {
        assertThat(starts(ZoneId.of("Europe/Berlin"), "2026-10-25", open("01:30", "03:30"), 0))
                .containsExactly(
                        "01:30 +02:00", "02:00 +02:00", "02:30 +02:00", "02:00 +01:00", "02:30 +01:00", "03:00 +01:00")
                .doesNotHaveDuplicates();
    }

    /** New York 2026: 8 March and 1 November at 02:00 (Energy Policy Act of 2005, section 110). */
    @Test
    void followsTheChangeDatesOfTheZone() {
        ZoneId newYork = ZoneId.of("America/New_York");
        assertThat(starts(newYork, "2026-03-08", open("01:00", "04:00"), 22))
                .containsExactly("01:22 -05:00", "01:52 -05:00", "03:22 -04:00");
        assertThat(starts(newYork, "2026-11-01", open("00:30", "02:30"), 0))
                .containsExactly(
                        "00:30 -04:00", "01:00 -04:00", "01:30 -04:00", "01:00 -05:00", "01:30 -05:00", "02:00 -05:00");
        assertThat(starts(newYork, "2026-03-29", open("01:00", "04:00"), 0)).hasSize(6);
        assertThat(starts(ZoneId.of("Europe/Berlin"), "2026-03-08", open("01:00", "04:00"), 0))
                .hasSize(6);
    }

    /** Lord Howe Island moves by half an hour: 5 April 2026 back, 4 October 2026 forward. */
    @Test
    void keepsToRealMinutesWhereTheClockMovesByHalfAnHour() {
        ZoneId lordHowe = ZoneId.of("Australia/Lord_Howe");
        assertThat(starts(lordHowe, "2026-10-04", open("01:30", "03:30"), 0))
                .containsExactly("01:30 +10:30", "02:30 +11:00", "03:00 +11:00");
        lastHalfAnHourEachAndDoNotOverlap(lordHowe, "2026-04-05", 7);
    }

    @Test
    void lastsTheSameOnEveryDayOfTheYear() {
        for (String zone : List.of("Europe/Berlin", "America/New_York", "Asia/Kathmandu", "UTC")) {
            LocalDate.of(2026, 1, 1)
                    .datesUntil(LocalDate.of(2027, 1, 1))
                    .forEach(day -> lastHalfAnHourEachAndDoNotOverlap(ZoneId.of(zone), day.toString(), 22));
        }
    }

    @Test
    void refusesPeriodsThatEndBeforeTheyBegin() {
        assertThatThrownBy(() -> open("10:00", "10:00")).isInstanceOf(IllegalArgumentException.class);
        assertThatThrownBy(() -> new SlotGrid(ZoneId.of("UTC"), Duration.ofSeconds(90)))
                .isInstanceOf(IllegalArgumentException.class);
    }

    @Test
    void touchingSlotsDoNotOverlap() {
        Instant ten = Instant.parse("2026-03-12T10:00:00Z");
        Slot slot = new Slot(CELL, ten, ten.plusSeconds(1800));
        assertThat(slot.overlaps(ten.plusSeconds(1800), ten.plusSeconds(3600))).isFalse();
        assertThat(slot.overlaps(ten.plusSeconds(1799), ten.plusSeconds(3600))).isTrue();
        assertThat(slot.overlaps(ten.minusSeconds(1800), ten)).isFalse();
    }
}
