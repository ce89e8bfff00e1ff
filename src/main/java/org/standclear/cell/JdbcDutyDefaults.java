package org.standclear.cell;

import java.sql.ResultSet;
import java.sql.SQLException;
import java.time.Clock;
import java.time.Instant;
import java.util.Arrays;
import java.util.List;
import java.util.UUID;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.stereotype.Service;
import org.springframework.transaction.annotation.Transactional;
import org.standclear.cell.RecurringDuties.Interval;
import org.standclear.platform.ids.CellId;
import org.standclear.platform.ids.PersonId;
import org.standclear.platform.lab.Labs;
import org.standclear.platform.time.LabTime;
import org.standclear.platform.time.SqlTime;
import org.standclear.trail.Trail;
import org.standclear.trail.TrailEntry;

/** The table of defaults; rows are only ever added. */
@Service
class JdbcDutyDefaults implements DutyDefaults {

    private final JdbcClient jdbc;
    private final RecurringRows intervals;
    private final Labs labs;
    private final LabTime labTime;
    private final Trail trail;
    private final Clock clock;

    JdbcDutyDefaults(JdbcClient jdbc, RecurringRows intervals, Labs labs, LabTime labTime, Trail trail, Clock clock) {
        this.jdbc = jdbc;
        this.intervals = intervals;
        this.labs = labs;
        this.labTime = labTime;
        this.trail = trail;
        this.clock = clock;
    }

    @Override
    public List<Default> inForce() {
        List<Default> set = history();
        return Arrays.stream(RecurringDuty.values())
                .map(duty -> set.stream()
                        .filter(one -> one.duty() == duty)
                        .findFirst()
                        .orElse(new Default(duty, COMMON_PRACTICE_DAYS, "once a year, common practice", null, null)))
                .toList();
    }

    @Override
    public List<Default> history() {
        return jdbc.sql("select * from cell_duty_defaults where lab_id = :lab order by changed_at desc, number desc")
                .param("lab", labs.theLab().id().value())
                .query(JdbcDutyDefaults::row)
                .list();
    }

    @Override
    @Transactional
    public void change(RecurringDuty duty, int days, String reason, PersonId by) {
        jdbc.sql("""
                insert into cell_duty_defaults (lab_id, duty, number, interval_days, changed_by, changed_at, reason)
                select cast(:lab as uuid), cast(:duty as varchar(20)), 1 + coalesce(max(number), 0), :days, :by, :at, :reason
                from cell_duty_defaults where lab_id = :lab and duty = :duty""")
                .param("lab", labs.theLab().id().value())
                .param("duty", duty.name())
                .param("days", days)
                .param("by", by.value())
                .param("at", SqlTime.toSql(now()))
                .param("reason", reason)
                .update();
        String often = days == 0 ? "none by itself" : "every " + days + " days";
        trail.append(TrailEntry.of(
                        labs.theLab().id(),
                        "cell." + duty.code() + "-default",
                        labs.theLab().id(),
                        by,
                        "New cells, " + duty.words() + ": " + often + ". " + reason)
                .with("days", days)
                .with("reason", reason));
    }

    @Override
    @Transactional
    public void begin(CellId cell, PersonId by) {
        Instant now = now();
        inForce().stream()
                .filter(one -> one.days() > 0)
                .forEach(one -> intervals.add(
                        cell,
                        new Interval(
                                one.duty(),
                                one.days(),
                                by,
                                now,
                                "default for new cells: " + one.reason(),
                                labTime.date(now).plusDays(one.days()))));
    }

    private Instant now() {
        return SqlTime.stored(clock.instant());
    }

    private static Default row(ResultSet row, int number) throws SQLException {
        return new Default(
                RecurringDuty.valueOf(row.getString("duty")),
                row.getInt("interval_days"),
                row.getString("reason"),
                new PersonId(row.getObject("changed_by", UUID.class)),
                SqlTime.read(row, "changed_at"));
    }
}
