package org.standclear.incident.records;

import java.util.ArrayList;
import java.util.List;
import java.util.UUID;
import org.springframework.core.annotation.Order;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.stereotype.Component;
import org.standclear.platform.ids.LabId;
import org.standclear.platform.lab.LooseEnds;

/** Incidents that are not closed, and corrective actions that nobody did or nobody looked at again, an incident a line. */
@Component
@Order(2)
class IncidentLooseEnds implements LooseEnds {

    /** So many have a line of their own; the others are counted. */
    private static final int SHOWN = 10;

    private final JdbcClient jdbc;

    IncidentLooseEnds(JdbcClient jdbc) {
        this.jdbc = jdbc;
    }

    private record Row(UUID id, int number, boolean closed, int actions) {

        LooseEnd line() {
            String open = closed ? "is closed, but" : "is not closed: an instructor or the safety reviewer closes it";
            String left = actions == 0
                    ? ""
                    : (closed ? " " : "; ")
                            + LooseEnd.count(actions, "corrective action is", "corrective actions are")
                            + " not done or not looked at again";
            return new LooseEnd("Incident " + number + " " + open + left + ".", "/incidents/" + id, false);
        }
    }

    @Override
    public List<LooseEnd> of(LabId lab) {
        List<Row> rows = jdbc.sql("""
                select i.id, i.number, i.state, (select count(*) from incident_actions a
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
                        row.getInt("actions")))
                .list();
        List<LooseEnd> ends =
                new ArrayList<>(rows.stream().limit(SHOWN).map(Row::line).toList());
        if (rows.size() > SHOWN) {
            ends.add(new LooseEnd(
                    "And " + LooseEnd.count(rows.size() - SHOWN, "more incident", "more incidents") + " like these.",
                    "/incidents?lab=" + lab,
                    false));
        }
        return ends;
    }
}
