package org.standclear.desk.web;

import java.time.LocalDate;
import java.util.Comparator;
import java.util.List;
import org.springframework.stereotype.Component;
import org.standclear.cell.Cell;
import org.standclear.cell.Cells;
import org.standclear.cell.DutyDue;
import org.standclear.cell.RecurringDuties;
import org.standclear.platform.time.LabTime;

/** What comes round on the lab's cells, by its dates, as pages say it. */
@Component
class DatedDuties {

    private static final int SOON_DAYS = 30;

    private final Cells cells;
    private final RecurringDuties duties;
    private final LabTime labTime;

    DatedDuties(Cells cells, RecurringDuties duties, LabTime labTime) {
        this.cells = cells;
        this.duties = duties;
        this.labTime = labTime;
    }

    /** One date. */
    record Due(LocalDate on, String day, String what, String cell, String href, String state, String words) {}

    /** What is due, and where. */
    record Dated(Cell cell, DutyDue due) {}

    /** Everything that has an interval, what is due first first. */
    List<Dated> all() {
        return cells.all().stream()
                .flatMap(cell -> duties.due(cell.id()).stream().map(due -> new Dated(cell, due)))
                .sorted(Comparator.comparing(one -> one.due().due()))
                .toList();
    }

    /** One of them in words. */
    Due line(Dated one) {
        LocalDate today = labTime.today();
        DutyDue due = one.due();
        boolean late = due.overdue(today);
        return new Due(
                due.due(),
                labTime.day(due.due()) + " " + due.due().getYear(),
                due.duty().words(),
                one.cell().name(),
                "/cells/" + one.cell().id(),
                late ? "failed" : due.within(today, SOON_DAYS) ? "due" : "none",
                late ? due.fromNow(today) + ": no release" : due.fromNow(today));
    }
}
