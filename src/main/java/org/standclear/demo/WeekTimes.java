package org.standclear.demo;

import com.fasterxml.jackson.annotation.JsonProperty;
import java.time.DayOfWeek;
import java.time.Instant;
import java.time.LocalDate;
import java.time.LocalTime;
import java.time.ZoneId;
import java.time.temporal.TemporalAdjusters;

/** Turns the weekdays and times of the seed files into instants of the week in which the demo starts. */
record WeekTimes(LocalDate monday, ZoneId zone, Instant start) {

    /** The week around an instant, in the lab's zone. */
    static WeekTimes around(Instant start, ZoneId zone) {
        LocalDate today = start.atZone(zone).toLocalDate();
        return new WeekTimes(today.with(TemporalAdjusters.previousOrSame(DayOfWeek.MONDAY)), zone, start);
    }

    /** The date of a weekday of this week. */
    LocalDate date(Day day) {
        return monday.plusDays(day.weekday().getValue() - 1L);
    }

    /** A weekday and time of this week. */
    Instant at(Day day, LocalTime time) {
        return at(date(day), time);
    }

    /** A date and time in the lab. */
    Instant at(LocalDate date, LocalTime time) {
        return date.atTime(time).atZone(zone).toInstant();
    }

    /** The lab's date when the demo starts. */
    LocalDate today() {
        return start.atZone(zone).toLocalDate();
    }

    /** Weekdays as the files write them. */
    enum Day {
        @JsonProperty("Mon")
        MON(DayOfWeek.MONDAY),
        @JsonProperty("Tue")
        TUE(DayOfWeek.TUESDAY),
        @JsonProperty("Wed")
        WED(DayOfWeek.WEDNESDAY),
        @JsonProperty("Thu")
        THU(DayOfWeek.THURSDAY),
        @JsonProperty("Fri")
        FRI(DayOfWeek.FRIDAY);

        private final DayOfWeek weekday;

        Day(DayOfWeek weekday) {
            this.weekday = weekday;
        }

        DayOfWeek weekday() {
            return weekday;
        }
    }
}
