package org.standclear.retention;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.time.Instant;
import java.time.Period;
import java.time.ZoneId;
import java.util.Random;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.standclear.platform.retention.RecordKind;

/** When a time is over, at the second. */
class KeepingTimeTests {

    private static final ZoneId CHICAGO = ZoneId.of("America/Chicago");

    private static Instant end(KeepingTime time, String start, ZoneId zone) {
        return time.endOf(Instant.parse(start), zone).orElseThrow();
    }

    /** Expected ends by the calendar: java.time's own rule for a day that a month does not have is its last day. */
    @ParameterizedTest
    @CsvSource({
        // in 2027 the clocks of Chicago go forward on 14 March only: 10:00 there is an hour later in UTC
        "P1Y,  2026-03-11T15:00:00Z, 2027-03-11T16:00:00Z",
        "P1Y,  2024-02-29T18:00:00Z, 2025-02-28T18:00:00Z",
        "P1M,  2026-01-31T18:00:00Z, 2026-02-28T18:00:00Z",
        // the clocks of Chicago go forward on 8 March 2026: 12:00 stays 12:00 there
        "P30D, 2026-02-20T18:00:00Z, 2026-03-22T17:00:00Z",
    })
    void endsOnTheSameDayOfTheCalendar(String period, String start, String end) {
        KeepingTime time = new KeepingTime(Period.parse(period), false);
        assertThat(end(time, start, CHICAGO)).isEqualTo(end);
        assertThat(time.isOver(Instant.parse(start), Instant.parse(end).minusSeconds(1), CHICAGO))
                .isFalse();
        assertThat(time.isOver(Instant.parse(start), Instant.parse(end), CHICAGO))
                .isTrue();
        assertThat(time.isOver(Instant.parse(start), Instant.parse(end).plusSeconds(1), CHICAGO))
                .isTrue();
    }

    /**
     * 29 CFR 1904.33(a): five years following the end of the calendar year that the records cover, so those of 2026 until
     * the end of 2031.
     */
    @ParameterizedTest
    @CsvSource({
        "2026-03-11T15:00:00Z",
        "2026-01-01T06:00:00Z",
        // still 2026 in Chicago
        "2027-01-01T05:59:59Z"
    })
    void countsFromTheEndOfTheLabsCalendarYear(String start) {
        KeepingTime time = DefaultTimes.of(RecordKind.INCIDENTS);
        assertThat(end(time, start, CHICAGO)).isEqualTo("2032-01-01T06:00:00Z");
        assertThat(time.isOver(Instant.parse(start), Instant.parse("2032-01-01T05:59:59Z"), CHICAGO))
                .isFalse();
        assertThat(time.isOver(Instant.parse(start), Instant.parse("2032-01-01T06:00:00Z"), CHICAGO))
                .isTrue();
    }

    @Test
    void takesTheNextYearForTheFirstSecondOfIt() {
        assertThat(end(DefaultTimes.of(RecordKind.INCIDENTS), "2027-01-01T06:00:00Z", CHICAGO))
                .isEqualTo("2033-01-01T06:00:00Z");
    }

    /** 29 CFR 1910.1020(d)(1)(i), counted from the closing. */
    @Test
    void keepsMedicalNotesForThirtyYears() {
        assertThat(end(DefaultTimes.of(RecordKind.MEDICAL_NOTES), "2026-06-11T15:00:00Z", CHICAGO))
                .isEqualTo("2056-06-11T15:00:00Z");
    }

    @Test
    void neverMissesWhatIsOverWhenItLooksForIt() {
        Random random = new Random(20261127);
        for (int i = 0; i < 20_000; i++) {
            KeepingTime time = new KeepingTime(
                    Period.of(random.nextInt(6), random.nextInt(13), 1 + random.nextInt(40)), random.nextBoolean());
            Instant start = Instant.parse("2020-01-01T00:00:00Z").plusSeconds(random.nextInt(250_000_000));
            Instant now = end(time, start.toString(), CHICAGO);
            assertThat(time.startsBefore(now, CHICAGO).orElseThrow())
                    .as("%s kept %s, over at %s", start, time, now)
                    .isAfter(start);
        }
    }

    @Test
    void keepsForGood() {
        assertThat(KeepingTime.forGood().endOf(Instant.EPOCH, CHICAGO)).isEmpty();
        assertThat(KeepingTime.forGood().isOver(Instant.EPOCH, Instant.MAX, CHICAGO))
                .isFalse();
        assertThat(KeepingTime.forGood().startsBefore(Instant.EPOCH, CHICAGO)).isEmpty();
    }

    @Test
    void refusesNoTimeAtAll() {
        assertThatThrownBy(() -> new KeepingTime(Period.ZERO, false)).isInstanceOf(IllegalArgumentException.class);
        assertThatThrownBy(() -> new KeepingTime(Period.ofDays(-1), false))
                .isInstanceOf(IllegalArgumentException.class);
    }

    @Test
    void tellsAShorterTimeFromALongerOne() {
        KeepingTime year = KeepingTime.years(1);
        assertThat(new KeepingTime(Period.ofMonths(11), false).isShorterThan(year))
                .isTrue();
        assertThat(new KeepingTime(Period.ofMonths(12), false).isShorterThan(year))
                .isFalse();
        // in a leap year 365 days end a day before a year does
        assertThat(new KeepingTime(Period.ofDays(365), false).isShorterThan(year))
                .isTrue();
        assertThat(new KeepingTime(Period.ofDays(366), false).isShorterThan(year))
                .isFalse();
        assertThat(year.isShorterThan(year)).isFalse();
        assertThat(year.isShorterThan(KeepingTime.forGood())).isTrue();
        assertThat(KeepingTime.forGood().isShorterThan(year)).isFalse();
        assertThat(KeepingTime.forGood().isShorterThan(KeepingTime.forGood())).isFalse();
        assertThat(KeepingTime.years(5).isShorterThan(KeepingTime.yearsAfterTheYear(5)))
                .isTrue();
        assertThat(KeepingTime.yearsAfterTheYear(5).isShorterThan(KeepingTime.years(5)))
                .isFalse();
        // longer for a clock that started in January, shorter for one of December
        assertThat(KeepingTime.yearsAfterTheYear(4).isShorterThan(new KeepingTime(Period.ofMonths(54), false)))
                .isTrue();
    }

    @Test
    void saysItInWords() {
        assertThat(KeepingTime.yearsAfterTheYear(5).words()).isEqualTo("5 years after the end of the calendar year");
        assertThat(new KeepingTime(Period.ofDays(1), false).words()).isEqualTo("1 day");
        assertThat(KeepingTime.forGood().words()).isEqualTo("for good");
    }
}
