package org.standclear.retention;

import java.time.Duration;
import java.time.Instant;
import java.time.LocalDate;
import java.time.Period;
import java.time.ZoneId;
import java.time.ZoneOffset;
import java.time.ZonedDateTime;
import java.util.Optional;
import org.jspecify.annotations.Nullable;

/**
 * How long something is kept after its clock started.
 *
 * @param period null for good
 * @param fromYearEnd counts from the end of the calendar year in which the clock started, in the lab's zone
 */
public record KeepingTime(@Nullable Period period, boolean fromYearEnd) {

    /** Month ends move by three days at most (31 January and one month is 28 February), and clocks by an hour. */
    private static final Duration MARGIN = Duration.ofDays(4);

    private static final LocalDate FOUR_YEARS = LocalDate.of(2024, 1, 1);

    public KeepingTime {
        if (period != null && (period.isNegative() || period.isZero())) {
            throw new IllegalArgumentException("a time that is kept is longer than nothing: " + period);
        }
    }

    /** Never disposed of. */
    public static KeepingTime forGood() {
        return new KeepingTime(null, false);
    }

    /** So many years, from the event. */
    public static KeepingTime years(int years) {
        return new KeepingTime(Period.ofYears(years), false);
    }

    /** So many years after the calendar year of the event. */
    public static KeepingTime yearsAfterTheYear(int years) {
        return new KeepingTime(Period.ofYears(years), true);
    }

    /** When the time is over for a clock that started then; empty when it is kept for good. */
    public Optional<Instant> endOf(Instant start, ZoneId zone) {
        if (period == null) {
            return Optional.empty();
        }
        ZonedDateTime from = start.atZone(zone);
        if (fromYearEnd) {
            from = from.toLocalDate().withDayOfYear(1).plusYears(1).atStartOfDay(zone);
        }
        return Optional.of(from.plus(period).toInstant());
    }

    /** Whether the time of a clock that started then is over at an instant; the end itself is over. */
    public boolean isOver(Instant start, Instant now, ZoneId zone) {
        return endOf(start, zone).filter(end -> !now.isBefore(end)).isPresent();
    }

    /** An instant before which every clock started whose time is over now; some later ones may have as well. */
    public Optional<Instant> startsBefore(Instant now, ZoneId zone) {
        return period == null
                ? Optional.empty()
                : Optional.of(now.atZone(zone).minus(period).toInstant().plus(MARGIN));
    }

    /**
     * Whether something would be over earlier by this time than by the other, whenever its clock started. Months and leap
     * years differ, so every day of four years is tried.
     */
    public boolean isShorterThan(KeepingTime other) {
        if (period == null || other.period() == null) {
            return period != null;
        }
        return FOUR_YEARS
                .datesUntil(FOUR_YEARS.plusYears(4))
                .map(day -> day.atStartOfDay(ZoneOffset.UTC).toInstant())
                .anyMatch(start -> endOf(start, ZoneOffset.UTC)
                        .orElseThrow()
                        .isBefore(other.endOf(start, ZoneOffset.UTC).orElseThrow()));
    }

    /** It in words: "5 years after the end of the calendar year". */
    public String words() {
        if (period == null) {
            return "for good";
        }
        return (part(period.getYears(), "year") + part(period.getMonths(), "month") + part(period.getDays(), "day"))
                        .strip()
                + (fromYearEnd ? " after the end of the calendar year" : "");
    }

    private static String part(int number, String unit) {
        return number == 0 ? "" : number + " " + unit + (number == 1 ? " " : "s ");
    }
}
