package org.standclear.incident.records;

import java.sql.ResultSet;
import java.sql.SQLException;
import java.sql.Types;
import java.util.List;
import java.util.Optional;
import java.util.UUID;
import org.jspecify.annotations.Nullable;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.stereotype.Repository;
import org.standclear.incident.Incident;
import org.standclear.incident.IncidentClass;
import org.standclear.incident.IncidentState;
import org.standclear.incident.Incidents.Filter;
import org.standclear.incident.Incidents.Position;
import org.standclear.incident.ReporterPart;
import org.standclear.incident.Severity;
import org.standclear.platform.database.RowLocks;
import org.standclear.platform.ids.BookingId;
import org.standclear.platform.ids.CellId;
import org.standclear.platform.ids.Id;
import org.standclear.platform.ids.IncidentId;
import org.standclear.platform.ids.LabId;
import org.standclear.platform.ids.PersonId;
import org.standclear.platform.ids.RunId;
import org.standclear.platform.time.SqlTime;

/** The table of incidents. */
@Repository
class IncidentRows {

    private final JdbcClient jdbc;
    private final InvolvedRows involved;
    private final RowLocks locks;

    IncidentRows(JdbcClient jdbc, InvolvedRows involved, RowLocks locks) {
        this.locks = locks;
        this.jdbc = jdbc;
        this.involved = involved;
    }

    /**
     * The next number in the lab; other reports wait for it until the transaction ends. Counted in a row of its own: a lock
     * on the lab would wait for everybody who writes into the record, and they for the cell that a report locks next.
     */
    int nextNumber(LabId lab) {
        int counted = jdbc.sql("update incident_numbers set last_number = last_number + 1 where lab_id = :lab")
                .param("lab", lab.value())
                .update();
        if (counted == 0) {
            jdbc.sql("insert into incident_numbers (lab_id, last_number) values (:lab, 1)")
                    .param("lab", lab.value())
                    .update();
        }
        return jdbc.sql("select last_number from incident_numbers where lab_id = :lab")
                .param("lab", lab.value())
                .query(Integer.class)
                .single();
    }

    void add(LabId lab, Incident incident, @Nullable String receiptSha256) {
        jdbc.sql("""
                insert into incidents (id, lab_id, number, cell_id, run_id, booking_id, class, sentence, happened_at,
                    reported_at, reporter, reporter_part, receipt_sha256, form_due_at, form_done_at, story, done_at_once,
                    actual, foreseeable, outcomes, state, closed_at, version)
                values (:id, :lab, :number, :cell, :run, :booking, :class, :sentence, :happened, :reported, :reporter,
                    :part, :receipt, :due, :done, :story, :atOnce, :actual, :foreseeable, :outcomes, :state, :closed, 1)""")
                .param("id", incident.id().value())
                .param("lab", lab.value())
                .param("number", incident.number())
                .param("cell", incident.cell().value())
                .param("run", value(incident.run()), Types.OTHER)
                .param("booking", value(incident.booking()), Types.OTHER)
                .param("class", incident.kind().name())
                .param("sentence", incident.sentence())
                .param("happened", SqlTime.toSql(incident.happenedAt()))
                .param("reported", SqlTime.toSql(incident.reportedAt()))
                .param("reporter", value(incident.reporter()), Types.OTHER)
                .param("part", incident.reporterPart().name())
                .param("receipt", receiptSha256, Types.VARCHAR)
                .params(FormColumns.of(incident))
                .param("state", incident.state().name())
                .param("closed", SqlTime.toSql(incident.closedAt()), Types.TIMESTAMP_WITH_TIMEZONE)
                .update();
    }

    /** Writes what can change; a stale version changes nothing. */
    boolean change(Incident incident) {
        return jdbc.sql("""
                update incidents set class = :class, form_due_at = :due, form_done_at = :done, story = :story,
                    done_at_once = :atOnce, actual = :actual, foreseeable = :foreseeable, outcomes = :outcomes,
                    state = :state, reviewer = :reviewer, closed_at = :closed, version = version + 1
                where id = :id and version = :version""")
                        .param("class", incident.kind().name())
                        .params(FormColumns.of(incident))
                        .param("state", incident.state().name())
                        .param("reviewer", value(incident.reviewer()), Types.OTHER)
                        .param("closed", SqlTime.toSql(incident.closedAt()), Types.TIMESTAMP_WITH_TIMEZONE)
                        .param("id", incident.id().value())
                        .param("version", incident.version())
                        .update()
                == 1;
    }

    Optional<Incident> find(IncidentId id) {
        return jdbc.sql("select * from incidents where id = :id")
                .param("id", id.value())
                .query(this::incident)
                .optional();
    }

    Optional<Incident> lock(IncidentId id) {
        return jdbc.sql("select * from incidents where id = :id" + locks.forChange())
                .param("id", id.value())
                .query(this::incident)
                .optional();
    }

    Optional<Incident> byReceipt(String receiptSha256) {
        return jdbc.sql("select * from incidents where receipt_sha256 = :receipt")
                .param("receipt", receiptSha256)
                .query(this::incident)
                .optional();
    }

    /** Incidents on the cell that keep it from running until a restart is approved; the earliest first. */
    List<Incident> holding(CellId cell) {
        return jdbc
                .sql("select * from incidents where cell_id = :cell and state <> 'CLOSED' order by reported_at, id")
                .param("cell", cell.value())
                .query(this::incident)
                .list()
                .stream()
                .filter(Incident::holdsCell)
                .toList();
    }

    List<Incident> ofRun(RunId run) {
        return jdbc.sql("select * from incidents where run_id = :run order by reported_at, id")
                .param("run", run.value())
                .query(this::incident)
                .list();
    }

    /** Latest report first, one more than asked for when there is a next page. */
    List<Incident> page(LabId lab, Filter filter, @Nullable Position after, int size) {
        StringBuilder sql = new StringBuilder("select * from incidents where lab_id = :lab");
        sql.append(filter.cell() == null ? "" : " and cell_id = :cell");
        sql.append(filter.state() == null ? "" : " and state = :state");
        sql.append(filter.kind() == null ? "" : " and class = :class");
        sql.append(filter.reporter() == null ? "" : " and reporter = :reporter");
        sql.append(after == null ? "" : " and (reported_at < :at or reported_at = :at and id < :id)");
        sql.append(" order by reported_at desc, id desc fetch first :size rows only");
        var query = jdbc.sql(sql.toString()).param("lab", lab.value()).param("size", size + 1);
        query = filter.cell() == null
                ? query
                : query.param("cell", filter.cell().value());
        query = filter.state() == null
                ? query
                : query.param("state", filter.state().name());
        query = filter.kind() == null
                ? query
                : query.param("class", filter.kind().name());
        query = filter.reporter() == null
                ? query
                : query.param("reporter", filter.reporter().value());
        if (after != null) {
            query = query.param("at", SqlTime.toSql(after.reportedAt()))
                    .param("id", after.incident().value());
        }
        return query.query(this::incident).list();
    }

    private Incident incident(ResultSet row, int number) throws SQLException {
        IncidentId id = new IncidentId(row.getObject("id", UUID.class));
        UUID run = row.getObject("run_id", UUID.class);
        UUID booking = row.getObject("booking_id", UUID.class);
        PersonId reporter = person(row, "reporter");
        return new Incident(
                id,
                row.getInt("number"),
                new CellId(row.getObject("cell_id", UUID.class)),
                run == null ? null : new RunId(run),
                booking == null ? null : new BookingId(booking),
                IncidentClass.valueOf(row.getString("class")),
                row.getString("sentence"),
                SqlTime.read(row, "happened_at"),
                SqlTime.read(row, "reported_at"),
                reporter,
                ReporterPart.valueOf(row.getString("reporter_part")),
                reporter == null,
                form(row),
                SqlTime.readNullable(row, "form_due_at"),
                SqlTime.readNullable(row, "form_done_at"),
                IncidentState.valueOf(row.getString("state")),
                person(row, "reviewer"),
                SqlTime.readNullable(row, "closed_at"),
                involved.of(id),
                row.getInt("version"));
    }

    private static Incident.@Nullable Form form(ResultSet row) throws SQLException {
        String actual = row.getString("actual");
        String foreseeable = row.getString("foreseeable");
        return actual == null || foreseeable == null
                ? null
                : new Incident.Form(
                        row.getString("story"),
                        row.getString("done_at_once"),
                        Severity.valueOf(actual),
                        Severity.valueOf(foreseeable),
                        FormColumns.outcomes(row.getString("outcomes")));
    }

    private static @Nullable PersonId person(ResultSet row, String column) throws SQLException {
        UUID value = row.getObject(column, UUID.class);
        return value == null ? null : new PersonId(value);
    }

    private static @Nullable UUID value(@Nullable Id id) {
        return id == null ? null : id.value();
    }
}
