package org.standclear.cell;

import java.sql.ResultSet;
import java.sql.SQLException;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.UUID;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.stereotype.Repository;
import org.standclear.cell.RecurringDuties.Done;
import org.standclear.cell.RecurringDuties.Interval;
import org.standclear.platform.ids.CellId;
import org.standclear.platform.ids.PersonId;
import org.standclear.platform.time.LabTime;
import org.standclear.platform.time.SqlTime;

/** The tables of recurring duties; rows are only ever added. */
@Repository
class RecurringRows {

    private final JdbcClient jdbc;
    private final LabTime labTime;

    RecurringRows(JdbcClient jdbc, LabTime labTime) {
        this.jdbc = jdbc;
        this.labTime = labTime;
    }

    List<DutyDue> due(CellId cell) {
        List<Interval> intervals = intervals(cell);
        List<Done> done = intervals.isEmpty() ? List.of() : done(cell);
        List<DutyDue> due = new ArrayList<>();
        for (RecurringDuty duty : RecurringDuty.values()) {
            intervals.stream()
                    .filter(interval -> interval.duty() == duty)
                    .findFirst()
                    .map(interval -> due(cell, interval, done))
                    .ifPresent(due::add);
        }
        return due;
    }

    private DutyDue due(CellId cell, Interval interval, List<Done> all) {
        Optional<LocalDate> last = all.stream()
                .filter(done -> done.duty() == interval.duty())
                .map(Done::on)
                .max(java.util.Comparator.naturalOrder());
        LocalDate dueOn = last.map(on -> on.plusDays(interval.days())).orElseGet(() -> firstDue(interval));
        return new DutyDue(cell, interval.duty(), interval.days(), last.orElse(null), dueOn);
    }

    private LocalDate firstDue(Interval interval) {
        LocalDate named = interval.firstDue();
        return named == null ? labTime.date(interval.at()) : named;
    }

    List<Interval> intervals(CellId cell) {
        return jdbc.sql("select * from cell_duty_intervals where cell_id = :cell order by number desc")
                .param("cell", cell.value())
                .query(RecurringRows::interval)
                .list();
    }

    List<Done> done(CellId cell) {
        return jdbc.sql(
                        "select * from cell_duties_done where cell_id = :cell order by done_on desc, recorded_at desc, id")
                .param("cell", cell.value())
                .query(RecurringRows::done)
                .list();
    }

    void add(CellId cell, Interval interval) {
        jdbc.sql("""
                insert into cell_duty_intervals (cell_id, duty, number, interval_days, changed_by, changed_at, reason,
                    first_due_on)
                select cast(:cell as uuid), cast(:duty as varchar(20)), 1 + coalesce(max(number), 0), :days, :by, :at, :reason,
                    cast(:first as date)
                from cell_duty_intervals where cell_id = :cell and duty = :duty""")
                .param("cell", cell.value())
                .param("duty", interval.duty().name())
                .param("days", interval.days())
                .param("by", interval.by().value())
                .param("at", SqlTime.toSql(interval.at()))
                .param("reason", interval.reason())
                .param("first", interval.firstDue())
                .update();
    }

    void add(Done done) {
        jdbc.sql("""
                insert into cell_duties_done (id, cell_id, duty, done_on, done_by, found, cell_version, recorded_by,
                    recorded_at)
                values (:id, :cell, :duty, :on, :doneBy, :found, :version, :by, :at)""")
                .param("id", done.id())
                .param("cell", done.cell().value())
                .param("duty", done.duty().name())
                .param("on", done.on())
                .param("doneBy", done.doneBy())
                .param("found", done.found())
                .param("version", done.cellVersion())
                .param("by", done.recordedBy().value())
                .param("at", SqlTime.toSql(done.recordedAt()))
                .update();
    }

    private static Interval interval(ResultSet row, int number) throws SQLException {
        return new Interval(
                RecurringDuty.valueOf(row.getString("duty")),
                row.getInt("interval_days"),
                new PersonId(row.getObject("changed_by", UUID.class)),
                SqlTime.read(row, "changed_at"),
                row.getString("reason"),
                row.getObject("first_due_on", LocalDate.class));
    }

    private static Done done(ResultSet row, int number) throws SQLException {
        return new Done(
                row.getObject("id", UUID.class),
                new CellId(row.getObject("cell_id", UUID.class)),
                RecurringDuty.valueOf(row.getString("duty")),
                row.getObject("done_on", LocalDate.class),
                row.getString("done_by"),
                row.getString("found"),
                row.getInt("cell_version"),
                new PersonId(row.getObject("recorded_by", UUID.class)),
                SqlTime.read(row, "recorded_at"));
    }
}
