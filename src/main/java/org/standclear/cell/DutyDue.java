package org.standclear.cell;

import java.time.LocalDate;
import java.time.temporal.ChronoUnit;
import org.jspecify.annotations.Nullable;
import org.standclear.platform.ids.CellId;

/**
 * When a duty on a cell is due.
 *
 * @param intervalDays how often
 * @param lastDone null when it was never recorded; then it is due since the interval was set, on a new cell one interval after it came in force
 * @param due the last day on which it is not late
 */
public record DutyDue(
        CellId cell,
        RecurringDuty duty,
        int intervalDays,
        @Nullable LocalDate lastDone,
        LocalDate due) {

    /** Whether releases wait for it on that day. */
    public boolean overdue(LocalDate today) {
        return today.isAfter(due);
    }

    /** Whether it is due within so many days from that day, or late. */
    public boolean within(LocalDate today, int days) {
        return !due.isAfter(today.plusDays(days));
    }

    /** "due Mon 30 Nov in 3 days" without the date: "in 3 days", "today", "2 days late". */
    public String fromNow(LocalDate today) {
        long days = ChronoUnit.DAYS.between(today, due);
        if (days == 0) {
            return "today";
        }
        String many = Math.abs(days) == 1 ? "1 day" : Math.abs(days) + " days";
        return days > 0 ? "in " + many : many + " late";
    }
}
