package org.standclear.demo;

import com.fasterxml.jackson.annotation.JsonProperty;
import java.time.LocalTime;
import java.util.List;
import org.jspecify.annotations.Nullable;
import org.standclear.booking.CellClosure;

/** The scripted week; week.yaml says what the words mean. */
record WeekSeed(
        List<CellSeed> cells,
        DayTestSeed dayTests,
        List<OutOfServiceSeed> outOfService,
        List<BlockSeed> blocks,
        ToolChangeSeed toolChange,
        List<NowSeed> now,
        List<BookingSeed> bookings) {

    /**
     * A cell.
     *
     * @param startsAt minutes after the half hour
     * @param program what the script runs on it
     * @param restricted why only staff attend there; null where students do
     */
    record CellSeed(
            String name,
            String file,
            int startsAt,
            String program,
            @Nullable String restricted) {}

    /** A tool change, and the bookings that are checked anew for it. */
    record ToolChangeSeed(
            String cell,
            String file,
            LocalTime at,
            String by,
            String approvedBy,
            String reason,
            List<PlannedSeed> bookings) {}

    /** A booking whose slot is found when it is made. */
    record PlannedSeed(String operator, String attendant, String program) {}

    /** When and by whom the day tests are made. */
    record DayTestSeed(LocalTime at, String by) {}

    /** A cell that is tagged out, and when it comes back. */
    record OutOfServiceSeed(
            String cell,
            WeekTimes.Day day,
            LocalTime at,
            String by,
            String reason,
            WeekTimes.Day backDay,
            LocalTime backAt,
            String backBy,
            String mended) {

        /** Whether the cell is out of service when the demo starts. */
        boolean covers(String name, WeekTimes times) {
            return cell.equals(name)
                    && !times.start().isBefore(times.at(day, at))
                    && times.start().isBefore(times.at(backDay, backAt));
        }
    }

    /** A time for which staff keep a cell. */
    record BlockSeed(
            String cell, WeekTimes.Day day, LocalTime from, LocalTime until, String kind, String words, String by) {

        CellClosure.Kind asKind() {
            return CellClosure.Kind.valueOf(kind.toUpperCase(java.util.Locale.ROOT));
        }
    }

    /** People who stand at a cell when the demo starts, and how far they have come. */
    record NowSeed(String operator, String attendant, Becomes becomes) {}

    /** One booking of the week. */
    record BookingSeed(
            WeekTimes.Day day,
            LocalTime at,
            String cell,
            String operator,
            String attendant,
            String program,
            Goes goes) {}

    /** How far a booking has come when the demo starts. */
    enum Becomes {
        @JsonProperty("ready")
        READY,
        @JsonProperty("checked-in")
        CHECKED_IN,
        @JsonProperty("running")
        RUNNING
    }

    /** How a booking goes once its slot has begun, or before. */
    enum Goes {
        @JsonProperty("ran")
        RAN,
        @JsonProperty("e-stop")
        E_STOP,
        @JsonProperty("protective-stop")
        PROTECTIVE_STOP,
        @JsonProperty("refused")
        REFUSED,
        @JsonProperty("lapsed")
        LAPSED,
        @JsonProperty("missed")
        MISSED,
        @JsonProperty("cancelled")
        CANCELLED,
        @JsonProperty("late-cancel")
        LATE_CANCEL,
        @JsonProperty("refill")
        REFILL,
        @JsonProperty("moved")
        MOVED;

        /** Whether people come to the cell. */
        boolean comesToTheCell() {
            return this == RAN
                    || this == E_STOP
                    || this == PROTECTIVE_STOP
                    || this == REFUSED
                    || this == LAPSED
                    || this == REFILL;
        }
    }
}
