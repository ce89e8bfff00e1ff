package org.standclear.run.records;

import java.sql.ResultSet;
import java.sql.SQLException;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.Optional;
import java.util.UUID;
import org.jspecify.annotations.Nullable;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.stereotype.Component;
import org.standclear.platform.ids.CourseId;
import org.standclear.platform.ids.RunId;
import org.standclear.platform.time.SqlTime;
import org.standclear.run.CloseOutItem;
import org.standclear.run.Evidence.Outcome;
import org.standclear.run.RunState;

/** Reads how runs came out, for whoever grades them: in two statements for a course, however many runs it has. */
@Component
class RunOutcomes {

    private static final String ONE = "u.id = :key";

    /** Runs that are evidence for anything in the course. */
    private static final String OF_COURSE = """
            u.id in (select e.run_id from run_evidence e join assignment_criteria c on c.id = e.criterion_id
                join assignments a on a.id = c.assignment_id where a.course_id = :key)""";

    private final JdbcClient jdbc;

    RunOutcomes(JdbcClient jdbc) {
        this.jdbc = jdbc;
    }

    Optional<Outcome> of(RunId run) {
        return Optional.ofNullable(those(ONE, run.value()).get(run));
    }

    Map<RunId, Outcome> ofCourse(CourseId course) {
        return those(OF_COURSE, course.value());
    }

    private Map<RunId, Outcome> those(String which, UUID key) {
        Map<RunId, List<String>> attendants = attendants(which, key);
        Map<RunId, Outcome> outcomes = new HashMap<>();
        jdbc.sql("""
                select u.id, u.state, u.ended_at, u.passes, u.stops, o.answer as odd, r.sha256
                from runs u left join program_revisions r on r.id = u.revision_id
                left join run_events o on o.run_id = u.id and o.kind = 'CLOSE_OUT' and o.item = :odd
                where\s""" + which)
                .param("key", key)
                .param("odd", CloseOutItem.ODD.number())
                .query(row -> {
                    RunId run = new RunId(row.getObject("id", UUID.class));
                    outcomes.put(run, outcome(row, attendants.getOrDefault(run, List.of())));
                });
        return outcomes;
    }

    private static Outcome outcome(ResultSet row, List<String> attendants) throws SQLException {
        return new Outcome(
                RunState.valueOf(row.getString("state")),
                SqlTime.readNullable(row, "ended_at"),
                row.getInt("passes"),
                row.getInt("stops"),
                odd(row.getString("odd")),
                attendants,
                Objects.requireNonNullElse(row.getString("sha256"), ""));
    }

    private static @Nullable String odd(@Nullable String answer) {
        return answer == null
                ? null
                : CloseOutItem.ODD
                        .choice(answer)
                        .map(CloseOutItem.Choice::words)
                        .orElse(answer);
    }

    /** Who stood at the e-stop from the start comes first, then who took over, in that order. */
    private Map<RunId, List<String>> attendants(String which, UUID key) {
        Map<RunId, List<String>> names = new HashMap<>();
        jdbc.sql("""
                select u.id, q.printed_name, min(h.happened_at) as came
                from runs u join run_people p on p.run_id = u.id and p.part = 'attendant'
                join people q on q.id = p.person_id
                left join run_events h on h.run_id = u.id and h.kind = 'HANDOVER' and h.account_id = p.person_id
                where\s""" + which + "\ngroup by u.id, p.person_id, q.printed_name order by came nulls first")
                .param("key", key)
                .query(row -> {
                    names.computeIfAbsent(new RunId(row.getObject("id", UUID.class)), run -> new ArrayList<>())
                            .add(row.getString("printed_name"));
                });
        return names;
    }
}
