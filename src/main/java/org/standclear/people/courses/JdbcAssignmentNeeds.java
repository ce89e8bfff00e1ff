package org.standclear.people.courses;

import java.util.List;
import java.util.stream.Collectors;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.stereotype.Service;
import org.springframework.transaction.annotation.Transactional;
import org.standclear.people.AssignmentNeeds;
import org.standclear.people.AssignmentNeeds.Needs;
import org.standclear.platform.ids.AssignmentId;
import org.standclear.platform.ids.PersonId;
import org.standclear.platform.lab.Labs;
import org.standclear.trail.Trail;
import org.standclear.trail.TrailEntry;

/** Needs as rows of words. */
@Service
@Transactional
class JdbcAssignmentNeeds implements AssignmentNeeds {

    private final JdbcClient jdbc;
    private final Trail trail;
    private final Labs labs;

    JdbcAssignmentNeeds(JdbcClient jdbc, Trail trail, Labs labs) {
        this.jdbc = jdbc;
        this.trail = trail;
        this.labs = labs;
    }

    private record Row(String kind, String words) {}

    @Override
    @Transactional(readOnly = true)
    public Needs of(AssignmentId assignment) {
        List<Row> rows = jdbc.sql("select kind, words from assignment_needs where assignment_id = :id")
                .param("id", assignment.value())
                .query((row, number) -> new Row(row.getString("kind"), row.getString("words")))
                .list();
        String tool = rows.stream()
                .filter(row -> row.kind().equals("TOOL"))
                .map(Row::words)
                .findFirst()
                .orElse(null);
        return new Needs(
                tool,
                rows.stream()
                        .filter(row -> row.kind().equals("FEATURE"))
                        .map(Row::words)
                        .collect(Collectors.toSet()));
    }

    @Override
    public void set(AssignmentId assignment, Needs needs, PersonId by) {
        jdbc.sql("delete from assignment_needs where assignment_id = :id")
                .param("id", assignment.value())
                .update();
        if (needs.tool() != null) {
            insert(assignment, "TOOL", needs.tool());
        }
        needs.features().forEach(words -> insert(assignment, "FEATURE", words));
        trail.append(TrailEntry.of(
                labs.theLab().id(),
                "people.assignment-needs-changed",
                assignment,
                by,
                needs.words().isEmpty()
                        ? "An assignment needs no special cell any more"
                        : "An assignment needs a cell with " + needs.words()));
    }

    private void insert(AssignmentId assignment, String kind, String words) {
        jdbc.sql("insert into assignment_needs (assignment_id, kind, words) values (:id, :kind, :words)")
                .param("id", assignment.value())
                .param("kind", kind)
                .param("words", words)
                .update();
    }
}
