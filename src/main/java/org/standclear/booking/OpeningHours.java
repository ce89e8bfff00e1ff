package org.standclear.booking;

import java.time.DayOfWeek;
import java.time.LocalDate;
import java.time.LocalTime;
import java.util.List;
import java.util.Map;
import org.standclear.platform.ids.PersonId;

/** When the lab is open: periods for each weekday, and days with hours of their own. */
public interface OpeningHours {

    /** The hours of a day. */
    DayHours on(LocalDate day);

    /** The hours of every day from the first to the last, both included, in order. */
    List<DayHours> from(LocalDate first, LocalDate last);

    /** The periods of each weekday on which the lab opens at all. */
    Map<DayOfWeek, List<OpenPeriod>> week();

    /** The days from that one on that have hours of their own, in order. */
    List<DayHours> exceptions(LocalDate from);

    /** Replaces the hours of a weekday; no periods means closed. The caller has checked that the person may. */
    void setWeekday(DayOfWeek weekday, List<OpenPeriod> periods, PersonId by);

    /** Replaces the hours of the whole week, with why; weekdays that are not named are closed. The caller may. */
    void setWeek(Map<DayOfWeek, List<OpenPeriod>> week, PersonId by, String reason);

    /** Takes a day's own hours away again, so that its weekday's hold. The caller has checked that the person may. */
    void asEveryWeek(LocalDate day, PersonId by);

    /** Gives a day hours of its own; no periods means closed. The caller has checked that the person may. */
    void except(DayHours hours, PersonId by);

    /**
     * When the lab is open on one day.
     *
     * @param note why the day has hours of its own ("college holiday"); empty on ordinary days
     */
    record DayHours(LocalDate day, List<OpenPeriod> periods, String note) {

        public DayHours {
            periods = List.copyOf(periods);
        }

        /** Whether it is open from then until then without a pause. */
        boolean spans(LocalTime from, LocalTime until) {
            return periods.stream()
                    .anyMatch(period -> !from.isBefore(period.opens()) && !until.isAfter(period.closes()));
        }

        /** Whether it does not open at all. */
        public boolean closed() {
            return periods.isEmpty();
        }
    }
}
