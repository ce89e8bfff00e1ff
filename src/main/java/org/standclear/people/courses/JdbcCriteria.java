package org.standclear.people.courses;

import java.sql.ResultSet;
import java.sql.SQLException;
import java.sql.Types;
import java.time.Clock;
import java.util.List;
import java.util.Optional;
import java.util.UUID;
import org.jspecify.annotations.Nullable;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.stereotype.Service;
import org.springframework.transaction.annotation.Transactional;
import org.standclear.people.Criteria;
import org.standclear.people.Criteria.Criterion;
import org.standclear.platform.ids.AssignmentId;
import org.standclear.platform.ids.Id;
import org.standclear.platform.ids.PersonId;
import org.standclear.platform.lab.Labs;
import org.standclear.platform.text.PlainText;
import org.standclear.platform.time.SqlTime;
import org.standclear.trail.Trail;
import org.standclear.trail.TrailEntry;

/** Criteria as the table has them. */
@Service
@Transactional
class JdbcCriteria implements Criteria {

    private static final int LONGEST = 200;
    private static final int MOST_POINTS = 1000;

    private final JdbcClient jdbc;
    private final Trail trail;
    private final Labs labs;
    private final Clock clock;

    JdbcCriteria(JdbcClient jdbc, Trail trail, Labs labs, Clock clock) {
        this.jdbc = jdbc;
        this.trail = trail;
        this.labs = labs;
        this.clock = clock;
    }

    @Override
    @Transactional(readOnly = true)
    public List<Criterion> of(AssignmentId assignment) {
        return jdbc.sql("""
                select * from assignment_criteria where assignment_id = :id and retired_at is null order by place""")
                .param("id", assignment.value())
                .query((row, number) -> criterion(row))
                .list();
    }

    @Override
    @Transactional(readOnly = true)
    public Optional<Criterion> find(UUID id) {
        return jdbc.sql("select * from assignment_criteria where id = :id")
                .param("id", id)
                .query((row, number) -> criterion(row))
                .optional();
    }

    @Override
    public Optional<Wrong> add(AssignmentId assignment, String words, @Nullable Integer points, PersonId by) {
        if (PlainText.check(words, LONGEST) instanceof PlainText.Refused refused) {
            return Optional.of(new Wrong("words", refused.says()));
        }
        if (points != null && (points < 0 || points > MOST_POINTS)) {
            return Optional.of(new Wrong("points", "Use 0 to " + MOST_POINTS + " points, or leave it empty for none."));
        }
        jdbc.sql("select id from assignments where id = :id for update")
                .param("id", assignment.value())
                .query(UUID.class)
                .single();
        List<Criterion> standing = of(assignment);
        String kept = ((PlainText.Fine) PlainText.check(words, LONGEST)).text();
        if (standing.size() >= MOST) {
            return Optional.of(
                    new Wrong("words", "An assignment has " + MOST + " criteria at most; retire one first."));
        }
        if (standing.stream().anyMatch(one -> one.words().equalsIgnoreCase(kept))) {
            return Optional.of(new Wrong("words", "The assignment has that criterion already."));
        }
        int place = jdbc.sql("select coalesce(max(place), 0) + 1 from assignment_criteria where assignment_id = :id")
                .param("id", assignment.value())
                .query(Integer.class)
                .single();
        UUID id = Id.newValue();
        jdbc.sql("""
                insert into assignment_criteria (id, assignment_id, place, words, points, added_by, added_at)
                values (:id, :assignment, :place, :words, :points, :by, :at)""")
                .param("id", id)
                .param("assignment", assignment.value())
                .param("place", place)
                .param("words", kept)
                .param("points", points, Types.INTEGER)
                .param("by", by.value())
                .param("at", SqlTime.toSql(clock.instant()))
                .update();
        tell("people.criterion-added", assignment, by, "An assignment has a new criterion: " + kept);
        return Optional.empty();
    }

    @Override
    public boolean retire(UUID id, PersonId by) {
        boolean retired = jdbc.sql("""
                update assignment_criteria set retired_by = :by, retired_at = :at where id = :id and retired_at is null""")
                        .param("by", by.value())
                        .param("at", SqlTime.toSql(clock.instant()))
                        .param("id", id)
                        .update()
                == 1;
        if (retired) {
            find(id).ifPresent(one -> tell(
                    "people.criterion-retired",
                    one.assignment(),
                    by,
                    "A criterion is not used any more: " + one.words()));
        }
        return retired;
    }

    private void tell(String kind, AssignmentId assignment, PersonId by, String words) {
        trail.append(TrailEntry.of(labs.theLab().id(), kind, assignment, by, words));
    }

    private static Criterion criterion(ResultSet row) throws SQLException {
        return new Criterion(
                row.getObject("id", UUID.class),
                new AssignmentId(row.getObject("assignment_id", UUID.class)),
                row.getInt("place"),
                row.getString("words"),
                row.getObject("points", Integer.class),
                row.getObject("retired_by") == null);
    }
}
