package org.standclear.people.courses;

import java.sql.ResultSet;
import java.sql.SQLException;
import java.time.Instant;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.UUID;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.stereotype.Repository;
import org.springframework.transaction.annotation.Transactional;
import org.standclear.people.DueDates;
import org.standclear.platform.ids.AssignmentId;
import org.standclear.platform.ids.PersonId;
import org.standclear.platform.ids.SectionId;
import org.standclear.platform.lab.Labs;
import org.standclear.platform.time.SqlTime;
import org.standclear.trail.Trail;
import org.standclear.trail.TrailEntry;

/** Due dates in the database; every change stands in the record with before, after and reason. */
@Repository
class JdbcDueDates implements DueDates {

    private static final String READ = """
            select a.id, c.code as course_code, a.title, a.minimum_runs, s.id as section_id, s.code, d.due_at,
                (select count(*) from enrolments e where e.section_id = s.id) as student_count
            from assignments a join courses c on c.id = a.course_id
            join assignment_due_dates d on d.assignment_id = a.id join sections s on s.id = d.section_id""";

    private final JdbcClient jdbc;
    private final Trail trail;
    private final Labs labs;

    JdbcDueDates(JdbcClient jdbc, Trail trail, Labs labs) {
        this.jdbc = jdbc;
        this.trail = trail;
        this.labs = labs;
    }

    private record Row(AssignmentId id, String course, String title, int minimumRuns, DueSection section) {}

    @Override
    public List<DueAssignment> dueFrom(Instant instant) {
        return together(jdbc.sql(READ + """
                 where c.lab_id = :lab and exists (
                    select 1 from assignment_due_dates x where x.assignment_id = a.id and x.due_at >= :from)
                order by c.code, a.title, a.id, s.code""")
                .param("from", SqlTime.toSql(instant))
                .param("lab", labs.theLab().id().value())
                .query((row, number) -> row(row))
                .list());
    }

    @Override
    public Optional<DueAssignment> find(AssignmentId id) {
        return together(jdbc.sql(READ + " where a.id = :id order by s.code")
                        .param("id", id.value())
                        .query((row, number) -> row(row))
                        .list())
                .stream()
                .findFirst();
    }

    private static Row row(ResultSet row) throws SQLException {
        return new Row(
                new AssignmentId(row.getObject("id", UUID.class)),
                row.getString("course_code"),
                row.getString("title"),
                row.getInt("minimum_runs"),
                new DueSection(
                        new SectionId(row.getObject("section_id", UUID.class)),
                        row.getString("code"),
                        row.getInt("student_count"),
                        SqlTime.read(row, "due_at")));
    }

    private static List<DueAssignment> together(List<Row> rows) {
        Map<AssignmentId, List<Row>> byId = new LinkedHashMap<>();
        rows.forEach(
                row -> byId.computeIfAbsent(row.id(), key -> new ArrayList<>()).add(row));
        return byId.values().stream()
                .map(of -> new DueAssignment(
                        of.get(0).id(),
                        of.get(0).course(),
                        of.get(0).title(),
                        of.get(0).minimumRuns(),
                        of.stream().map(Row::section).toList()))
                .toList();
    }

    @Override
    @Transactional
    public Optional<String> move(
            AssignmentId id, Map<SectionId, Instant> seen, Map<SectionId, Instant> due, String reason, PersonId by) {
        DueAssignment before = find(id).orElseThrow(() -> new IllegalArgumentException("no assignment " + id));
        TrailEntry entry = TrailEntry.of(
                        labs.theLab().id(),
                        "people.due_dates_moved",
                        id,
                        by,
                        "Due dates of " + before.course() + " \"" + before.title() + "\" were moved.")
                .with("reason", reason);
        for (DueSection section : before.sections()) {
            Instant wanted = due.get(section.id());
            if (wanted == null || wanted.equals(section.due())) {
                continue;
            }
            int moved = jdbc.sql("""
                    update assignment_due_dates set due_at = :due
                    where assignment_id = :assignment and section_id = :section and due_at = :seen""")
                    .param("due", SqlTime.toSql(wanted))
                    .param("assignment", id.value())
                    .param("section", section.id().value())
                    .param("seen", SqlTime.toSql(seen.getOrDefault(section.id(), section.due())))
                    .update();
            if (moved == 0) {
                return Optional.of("Somebody changed the due date of section " + section.code()
                        + " since this page was shown; look again.");
            }
            entry = entry.with("before " + section.code(), section.due()).with("after " + section.code(), wanted);
        }
        trail.append(entry);
        return Optional.empty();
    }
}
