package org.standclear.run.records;

import java.sql.ResultSet;
import java.sql.SQLException;
import java.time.Clock;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.Optional;
import java.util.UUID;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.stereotype.Service;
import org.springframework.transaction.annotation.Transactional;
import org.standclear.booking.Booking;
import org.standclear.booking.Bookings;
import org.standclear.people.Criteria;
import org.standclear.people.Criteria.Criterion;
import org.standclear.platform.ids.AssignmentId;
import org.standclear.platform.ids.CourseId;
import org.standclear.platform.ids.PersonId;
import org.standclear.platform.ids.RunId;
import org.standclear.platform.lab.Labs;
import org.standclear.platform.time.SqlTime;
import org.standclear.run.Evidence;
import org.standclear.run.Run;
import org.standclear.run.RunState;
import org.standclear.run.Runs;
import org.standclear.signoff.Part;
import org.standclear.trail.Trail;
import org.standclear.trail.TrailEntry;

/** Links of runs to criteria as the table has them. */
@Service
@Transactional
class JdbcEvidence implements Evidence {

    private static final String LINKS = """
            select e.*, c.assignment_id, c.place, c.words, c.points, c.retired_by
            from run_evidence e join assignment_criteria c on c.id = e.criterion_id
            """;

    private final JdbcClient jdbc;
    private final Runs runs;
    private final Bookings bookings;
    private final Criteria criteria;
    private final RunOutcomes outcomes;
    private final Trail trail;
    private final Labs labs;
    private final Clock clock;

    JdbcEvidence(
            JdbcClient jdbc,
            Runs runs,
            Bookings bookings,
            Criteria criteria,
            RunOutcomes outcomes,
            Trail trail,
            Labs labs,
            Clock clock) {
        this.jdbc = jdbc;
        this.runs = runs;
        this.bookings = bookings;
        this.criteria = criteria;
        this.outcomes = outcomes;
        this.trail = trail;
        this.labs = labs;
        this.clock = clock;
    }

    @Override
    @Transactional(readOnly = true)
    public List<Link> of(RunId run) {
        return jdbc.sql(LINKS + "where e.run_id = :run order by c.place")
                .param("run", run.value())
                .query((row, number) -> link(row))
                .list();
    }

    @Override
    @Transactional(readOnly = true)
    public List<Criterion> open(RunId run) {
        List<UUID> linked = of(run).stream().map(one -> one.criterion().id()).toList();
        return assignment(run).map(criteria::of).orElse(List.of()).stream()
                .filter(one -> !linked.contains(one.id()))
                .toList();
    }

    private Optional<AssignmentId> assignment(RunId run) {
        return runs.find(run).flatMap(one -> bookings.find(one.booking())).map(Booking::assignment);
    }

    @Override
    @Transactional(readOnly = true)
    public List<Graded> ofCourse(CourseId course) {
        Map<RunId, Outcome> came = outcomes.ofCourse(course);
        return jdbc.sql("""
                select e.*, c.assignment_id, c.place, c.words, c.points, c.retired_by, a.title, p.login, p.printed_name,
                    l.name as cell, u.started_at, u.closed_out_at, coalesce((
                        select min(s.code) from enrolments n join sections s on s.id = n.section_id
                        where n.person_id = p.id and s.course_id = a.course_id), '') as section
                from run_evidence e join assignment_criteria c on c.id = e.criterion_id
                join assignments a on a.id = c.assignment_id join runs u on u.id = e.run_id
                join bookings b on b.id = u.booking_id join people p on p.id = b.operator_id
                join cells l on l.id = u.cell_id
                where a.course_id = :course order by section, p.sort_name, a.title, c.place, u.started_at""")
                .param("course", course.value())
                .query((row, number) -> new Graded(
                        row.getString("section"),
                        row.getString("login"),
                        row.getString("printed_name"),
                        row.getString("title"),
                        row.getString("cell"),
                        SqlTime.read(row, "started_at"),
                        SqlTime.readNullable(row, "closed_out_at"),
                        Objects.requireNonNull(came.get(new RunId(row.getObject("run_id", UUID.class)))),
                        link(row)))
                .list();
    }

    @Override
    @Transactional(readOnly = true)
    public Optional<Outcome> outcome(RunId run) {
        return outcomes.of(run);
    }

    @Override
    public Optional<String> link(RunId run, UUID id, PersonId by) {
        Optional<Criterion> criterion =
                open(run).stream().filter(one -> one.id().equals(id)).findFirst();
        if (criterion.isEmpty()) {
            return Optional.of("The run is linked to it already, or its assignment has no such criterion.");
        }
        jdbc.sql("""
                insert into run_evidence (run_id, criterion_id, linked_by, linked_at)
                values (:run, :criterion, :by, :at)""")
                .param("run", run.value())
                .param("criterion", id)
                .param("by", by.value())
                .param("at", SqlTime.toSql(clock.instant()))
                .update();
        tell("run.evidence-linked", run, by, "Linked to: " + criterion.get().words());
        return Optional.empty();
    }

    @Override
    public Optional<String> unlink(RunId run, UUID criterion, PersonId by) {
        int removed = jdbc.sql("""
                delete from run_evidence where run_id = :run and criterion_id = :criterion and confirmed_by is null""")
                .param("run", run.value())
                .param("criterion", criterion)
                .update();
        if (removed == 0) {
            return Optional.of("It is confirmed, or not linked any more. An instructor takes a confirmation back.");
        }
        tell("run.evidence-unlinked", run, by, "No longer linked to: " + words(criterion));
        return Optional.empty();
    }

    @Override
    public Optional<String> confirm(RunId run, UUID criterion, PersonId by) {
        Run found = runs.find(run).orElseThrow();
        if (found.state() != RunState.CLOSED_OUT) {
            return Optional.of("The run is " + found.state().words() + "; it is confirmed once it is closed out.");
        }
        if (found.inPart(Part.OPERATOR).contains(by)) {
            return Optional.of("Another person confirms a run of your own.");
        }
        int confirmed = jdbc.sql("""
                update run_evidence set confirmed_by = :by, confirmed_at = :at
                where run_id = :run and criterion_id = :criterion and confirmed_by is null""")
                .param("by", by.value())
                .param("at", SqlTime.toSql(clock.instant()))
                .param("run", run.value())
                .param("criterion", criterion)
                .update();
        if (confirmed == 0) {
            return Optional.of("It is confirmed already, or not linked any more.");
        }
        tell("run.evidence-confirmed", run, by, "Confirmed as evidence for: " + words(criterion));
        return Optional.empty();
    }

    @Override
    public boolean takeBack(RunId run, UUID criterion, PersonId by) {
        boolean taken = jdbc.sql("""
                update run_evidence set confirmed_by = null, confirmed_at = null
                where run_id = :run and criterion_id = :criterion and confirmed_by is not null""")
                        .param("run", run.value())
                        .param("criterion", criterion)
                        .update()
                == 1;
        if (taken) {
            tell("run.evidence-taken-back", run, by, "Not confirmed any more: " + words(criterion));
        }
        return taken;
    }

    private String words(UUID criterion) {
        return criteria.find(criterion).map(Criterion::words).orElse("a criterion");
    }

    private void tell(String kind, RunId run, PersonId by, String words) {
        trail.append(TrailEntry.of(labs.theLab().id(), kind, run, by, words));
    }

    private static Link link(ResultSet row) throws SQLException {
        UUID confirmed = row.getObject("confirmed_by", UUID.class);
        return new Link(
                new RunId(row.getObject("run_id", UUID.class)),
                new Criterion(
                        row.getObject("criterion_id", UUID.class),
                        new AssignmentId(row.getObject("assignment_id", UUID.class)),
                        row.getInt("place"),
                        row.getString("words"),
                        row.getObject("points", Integer.class),
                        row.getObject("retired_by") == null),
                new PersonId(row.getObject("linked_by", UUID.class)),
                SqlTime.read(row, "linked_at"),
                confirmed == null ? null : new PersonId(confirmed),
                SqlTime.readNullable(row, "confirmed_at"));
    }
}
