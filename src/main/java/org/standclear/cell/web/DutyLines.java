package org.standclear.cell.web;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import org.springframework.stereotype.Component;
import org.standclear.cell.DutyDue;
import org.standclear.cell.RecurringDuties;
import org.standclear.cell.RecurringDuty;
import org.standclear.platform.ids.CellId;
import org.standclear.platform.time.LabTime;

/** Inspections and reviews of a cell in words: when due, or that none is set and no release waits for it. */
@Component
class DutyLines {

    private static final int SOON_DAYS = 30;

    private final RecurringDuties duties;
    private final LabTime labTime;

    DutyLines(RecurringDuties duties, LabTime labTime) {
        this.duties = duties;
        this.labTime = labTime;
    }

    /**
     * One duty in words.
     *
     * @param state the mark beside the words
     * @param gate what it does to releases
     */
    record Line(String what, String state, String words, String every, String last, String gate) {}

    /** The duties that have an interval. */
    List<Line> due(CellId cell) {
        return duties.due(cell).stream().map(this::line).toList();
    }

    /** Every duty, also those without an interval. */
    List<Line> all(CellId cell) {
        List<DutyDue> due = duties.due(cell);
        List<Line> lines = new ArrayList<>();
        for (RecurringDuty duty : RecurringDuty.values()) {
            lines.add(due.stream()
                    .filter(one -> one.duty() == duty)
                    .findFirst()
                    .map(this::line)
                    .orElse(new Line(duty.words(), "open", "no interval is set", "", "", "No release waits for it.")));
        }
        return List.copyOf(lines);
    }

    private Line line(DutyDue due) {
        LocalDate today = labTime.today();
        LocalDate last = due.lastDone();
        boolean late = due.overdue(today);
        return new Line(
                due.duty().words(),
                late ? "failed" : due.within(today, SOON_DAYS) ? "due" : "passed",
                (late ? "overdue, " : "due ") + labTime.day(due.due()) + " "
                        + due.due().getYear() + ", " + due.fromNow(today),
                "every " + due.intervalDays() + " days",
                last == null ? "never recorded" : "last on " + labTime.day(last) + " " + last.getYear(),
                late ? "No release until it is recorded." : "From the day after, no release until it is recorded.");
    }
}
