package org.standclear.incident.records;

import java.sql.ResultSet;
import java.sql.SQLException;
import java.util.ArrayList;
import java.util.EnumSet;
import java.util.List;
import java.util.UUID;
import org.springframework.core.annotation.Order;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.stereotype.Component;
import org.standclear.incident.IncidentClass;
import org.standclear.incident.IncidentState;
import org.standclear.platform.ids.LabId;
import org.standclear.platform.lab.LabScope;
import org.standclear.platform.lab.LooseEnds;
import org.standclear.platform.security.Role;
import org.standclear.platform.time.LabTime;
import org.standclear.platform.time.SqlTime;

/** Incidents that are not closed, and corrective actions that nobody did or nobody looked at again, an incident a line. */
@Component
@Order(2)
class IncidentLooseEnds implements LooseEnds {

    /** So many have a line of their own; the others are counted. */
    private static final int SHOWN = 10;

    private final JdbcClient jdbc;
    private final LabTime labTime;

    IncidentLooseEnds(JdbcClient jdbc, LabTime labTime) {
        this.jdbc = jdbc;
        this.labTime = labTime;
    }

    private record Row(UUID id, int number, boolean closed, int actions, String kind) {

        LooseEnd line() {
            String open = closed ? "is closed, but" : "is not closed: an instructor or the safety reviewer closes it";
            String left = actions == 0
                    ? ""
                    : (closed ? " " : "; ")
                            + LooseEnd.count(actions, "corrective action is", "corrective actions are")
                            + " not done or not looked at again";
            return new LooseEnd(
                    "Incident " + number + " " + open + left + ".",
                    List.of(kind),
                    EnumSet.of(Role.INSTRUCTOR, Role.REVIEWER),
                    "/incidents/" + id,
                    false);
        }
    }

    @Override
    public List<LooseEnd> of(LabId lab) {
        List<Row> rows = LabScope.in(
                lab,
                () -> jdbc.sql("""
                select i.id, i.number, i.state, i.class, i.reported_at, (select count(*) from incident_actions a
                    where a.incident_id = i.id and a.checked_at is null) as actions
                from incidents i
                where i.lab_id = :lab and (i.state <> 'CLOSED' or exists (select 1 from incident_actions a
                    where a.incident_id = i.id and a.checked_at is null))
                order by i.number""")
                        .param("lab", lab.value())
                        .query((row, number) -> new Row(
                                row.getObject("id", UUID.class),
                                row.getInt("number"),
                                row.getString("state").equals("CLOSED"),
                                row.getInt("actions"),
                                kind(row)))
                        .list());
        List<LooseEnd> ends =
                new ArrayList<>(rows.stream().limit(SHOWN).map(Row::line).toList());
        if (rows.size() > SHOWN) {
            ends.add(new LooseEnd(
                    "And " + LooseEnd.count(rows.size() - SHOWN, "more incident", "more incidents") + " like these.",
                    List.of(),
                    EnumSet.of(Role.INSTRUCTOR, Role.REVIEWER),
                    "/incidents?lab=" + lab,
                    false));
        }
        return ends;
    }

    /** Its kind, its day and how far it is: nothing of what anybody wrote, nor who was there. */
    private String kind(ResultSet row) throws SQLException {
        return IncidentClass.valueOf(row.getString("class")).words() + ", reported "
                + labTime.day(SqlTime.read(row, "reported_at")) + ", "
                + IncidentState.valueOf(row.getString("state")).words();
    }
}
