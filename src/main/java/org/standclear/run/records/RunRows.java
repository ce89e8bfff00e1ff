package org.standclear.run.records;

import java.sql.ResultSet;
import java.sql.SQLException;
import java.time.Instant;
import java.time.LocalDate;
import java.time.ZoneOffset;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.Optional;
import java.util.Set;
import java.util.UUID;
import org.jspecify.annotations.Nullable;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.stereotype.Repository;
import org.standclear.cell.CellByCell;
import org.standclear.platform.ids.BookingId;
import org.standclear.platform.ids.CellId;
import org.standclear.platform.ids.PersonId;
import org.standclear.platform.ids.RevisionId;
import org.standclear.platform.ids.RunId;
import org.standclear.platform.lab.Labs;
import org.standclear.platform.time.SqlTime;
import org.standclear.run.Run;
import org.standclear.run.RunState;
import org.standclear.run.Runs.Filter;
import org.standclear.run.Runs.Position;
import org.standclear.signoff.Part;

/** Runs in the database. */
@Repository
class RunRows {

    private static final Instant END_OF_TIME = Instant.parse("9999-01-01T00:00:00Z");

    private final JdbcClient jdbc;
    private final Labs labs;
    private final CellByCell cells;

    RunRows(JdbcClient jdbc, Labs labs, CellByCell cells) {
        this.jdbc = jdbc;
        this.labs = labs;
        this.cells = cells;
    }

    Optional<Run> find(RunId id) {
        return jdbc.sql("select * from runs where id = :id")
                .param("id", id.value())
                .query(this::run)
                .optional();
    }

    Optional<Run> of(BookingId booking) {
        return jdbc.sql("select * from runs where booking_id = :booking")
                .param("booking", booking.value())
                .query(this::run)
                .optional();
    }

    Optional<Run> moving(CellId cell) {
        return jdbc
                .sql("select * from runs where cell_id = :cell and state in ('RUNNING', 'STOPPED') order by started_at")
                .param("cell", cell.value())
                .query(this::run)
                .list()
                .stream()
                .findFirst();
    }

    /** Names the states, so that an index finds these few among years of runs that were closed out. */
    List<Run> open() {
        return whole(jdbc.sql(
                        "select * from runs where state in ('RUNNING', 'STOPPED', 'FINISHED')"
                                + " and exists (select 1 from cells c where c.id = runs.cell_id and c.lab_id = :lab) order by started_at, id")
                .param("lab", labs.theLab().id().value())
                .query(RunRows::alone)
                .list());
    }

    /** Latest start first, one more than asked for when there is a next page. */
    List<Run> page(Filter filter, @Nullable Position after, int size) {
        String bounds = (after == null
                        ? " and r.started_at < :before"
                        : " and r.started_at <= :before and (r.started_at < :before or r.id < :run)")
                + (filter.day() == null ? "" : " and r.started_at >= :earliest and r.lab_date = :day");
        Map<String, Object> values = new HashMap<>();
        values.put("count", size + 1);
        values.put("before", SqlTime.toSql(before(filter, after)));
        if (after != null) {
            values.put("run", after.run().value());
        }
        if (filter.day() != null) {
            values.put("day", filter.day());
            values.put("earliest", SqlTime.toSql(aroundMidnight(filter.day(), -1)));
        }
        String sql = filter.person() == null ? ofEachCell(filter, bounds, values) : ofPerson(filter, bounds, values);
        return sql.isEmpty()
                ? List.of()
                : whole(jdbc.sql(sql + " order by started_at desc, id desc fetch first :count rows only")
                        .params(values)
                        .query(RunRows::alone)
                        .list());
    }

    /** A bound even where none is asked for: H2 follows an index in its order only from a bound on. */
    private static Instant before(Filter filter, @Nullable Position after) {
        if (after != null) {
            return after.startedAt();
        }
        return filter.day() == null ? END_OF_TIME : aroundMidnight(filter.day(), 2);
    }

    /** Far enough from the day for every zone. */
    private static Instant aroundMidnight(LocalDate day, int days) {
        return day.plusDays(days).atStartOfDay(ZoneOffset.UTC).toInstant();
    }

    /** As many of each cell as are wanted of all. H2 reads an index backwards when all that is sorted by is backwards. */
    private String ofEachCell(Filter filter, String bounds, Map<String, Object> values) {
        Optional<String> parts = cells.parts(
                filter.cell(),
                values,
                cell -> "select * from runs r where r.cell_id = :" + cell + bounds
                        + " order by r.cell_id desc, r.started_at desc, r.id desc fetch first :count rows only");
        if (parts.isEmpty()) {
            values.put("lab", labs.theLab().id().value());
            return "select * from runs r where exists"
                    + " (select 1 from cells c where c.id = r.cell_id and c.lab_id = :lab)" + bounds;
        }
        return parts.get().isEmpty() ? "" : "select * from (" + parts.get() + ") latest";
    }

    /** The person's runs, wherever in the lab: whose they are is asked first. */
    private String ofPerson(Filter filter, String bounds, Map<String, Object> values) {
        values.put("lab", labs.theLab().id().value());
        values.put("person", Objects.requireNonNull(filter.person()).value());
        if (filter.cell() != null) {
            values.put("cell", filter.cell().value());
        }
        return "select * from runs r where r.id in (select p.run_id from run_people p where p.person_id = :person)"
                + " and exists (select 1 from cells c where c.id = r.cell_id and c.lab_id = :lab)"
                + (filter.cell() == null ? "" : " and r.cell_id = :cell") + bounds;
    }

    void add(Run run, LocalDate labDate) {
        jdbc.sql("""
                insert into runs (id, booking_id, cell_id, cell_version, revision_id, state, started_at, lab_date, passes,
                    stops, version)
                values (:id, :booking, :cell, :cellVersion, :revision, :state, :startedAt, :labDate, 0, 0, 1)""")
                .param("id", run.id().value())
                .param("booking", run.booking().value())
                .param("cell", run.cell().value())
                .param("cellVersion", run.cellVersion())
                .param("revision", run.revision().value())
                .param("state", run.state().name())
                .param("startedAt", SqlTime.toSql(run.startedAt()))
                .param("labDate", labDate)
                .update();
    }

    void change(Run run) {
        int changed = jdbc.sql("""
                update runs set cell_version = :cellVersion, revision_id = :revision, state = :state, ended_at = :ended,
                    closed_out_at = :closed, passes = :passes, stops = :stops, version = version + 1
                where id = :id and version = :version""")
                .param("cellVersion", run.cellVersion())
                .param("revision", run.revision().value())
                .param("state", run.state().name())
                .param("ended", SqlTime.toSql(run.endedAt()))
                .param("closed", SqlTime.toSql(run.closedOutAt()))
                .param("passes", run.passes())
                .param("stops", run.stops())
                .param("id", run.id().value())
                .param("version", run.version())
                .update();
        if (changed != 1) {
            throw new IllegalStateException("run " + run.id() + " changed although its booking was locked");
        }
    }

    /**
     * Everybody with a part in a run that had started and was not closed out at the instant. In two parts, so that an index
     * on the close-out spares the years before.
     */
    Set<PersonId> peopleAt(CellId cell, Instant at) {
        return Set.copyOf(jdbc.sql("""
                select p.person_id from run_people p join runs r on r.id = p.run_id
                where r.cell_id = :cell and r.started_at <= :at and r.closed_out_at is null
                union
                select p.person_id from run_people p join runs r on r.id = p.run_id
                where r.cell_id = :cell and r.started_at <= :at and r.closed_out_at >= :at""")
                .param("cell", cell.value())
                .param("at", SqlTime.toSql(at))
                .query((row, number) -> new PersonId(row.getObject("person_id", UUID.class)))
                .list());
    }

    void involve(Run run, PersonId person, Part part) {
        int there = jdbc.sql(
                        "select count(*) from run_people where run_id = :run and person_id = :person and part = :part")
                .param("run", run.id().value())
                .param("person", person.value())
                .param("part", part.code())
                .query(Integer.class)
                .single();
        if (there == 0) {
            jdbc.sql("insert into run_people (run_id, person_id, part, started_at) values (:run, :person, :part, :at)")
                    .param("run", run.id().value())
                    .param("person", person.value())
                    .param("part", part.code())
                    .param("at", SqlTime.toSql(run.startedAt()))
                    .update();
        }
    }

    private Run run(ResultSet row, int number) throws SQLException {
        return whole(List.of(alone(row, number))).get(0);
    }

    private static Run alone(ResultSet row, int number) throws SQLException {
        return new Run(
                new RunId(row.getObject("id", UUID.class)),
                new BookingId(row.getObject("booking_id", UUID.class)),
                new CellId(row.getObject("cell_id", UUID.class)),
                row.getInt("cell_version"),
                new RevisionId(row.getObject("revision_id", UUID.class)),
                RunState.valueOf(row.getString("state")),
                SqlTime.read(row, "started_at"),
                SqlTime.readNullable(row, "ended_at"),
                SqlTime.readNullable(row, "closed_out_at"),
                row.getInt("passes"),
                row.getInt("stops"),
                List.of(),
                row.getInt("version"));
    }

    /** The same runs with their people, who are asked together. */
    private List<Run> whole(List<Run> alone) {
        if (alone.isEmpty()) {
            return alone;
        }
        Map<UUID, List<Run.Involved>> people = new HashMap<>();
        jdbc.sql("select run_id, person_id, part from run_people where run_id in (:runs) order by part, person_id")
                .param("runs", alone.stream().map(run -> run.id().value()).toList())
                .query(row -> {
                    people.computeIfAbsent(row.getObject("run_id", UUID.class), id -> new ArrayList<>())
                            .add(new Run.Involved(
                                    new PersonId(row.getObject("person_id", UUID.class)),
                                    Part.of(row.getString("part"))));
                });
        return alone.stream()
                .map(run -> run.with(people.getOrDefault(run.id().value(), List.of())))
                .toList();
    }
}
