package org.standclear.incident.records;

import java.sql.ResultSet;
import java.sql.SQLException;
import java.time.LocalDate;
import java.util.List;
import java.util.Optional;
import java.util.UUID;
import org.jspecify.annotations.Nullable;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.stereotype.Repository;
import org.standclear.incident.ControlLevel;
import org.standclear.incident.CorrectiveAction;
import org.standclear.incident.CorrectiveActions.Counted;
import org.standclear.incident.CorrectiveActions.Position;
import org.standclear.incident.CorrectiveActions.Whose;
import org.standclear.platform.ids.IncidentId;
import org.standclear.platform.ids.PersonId;
import org.standclear.platform.lab.Labs;
import org.standclear.platform.time.SqlTime;

/** Corrective actions; each is done once and looked at once. */
@Repository
class ActionRows {

    private static final String NEXT = "coalesce(check_due_on, due_on)";
    private static final String OF_THE_LAB = "incident_id in (select i.id from incidents i where i.lab_id = :lab)";

    private final JdbcClient jdbc;
    private final Labs labs;

    ActionRows(JdbcClient jdbc, Labs labs) {
        this.jdbc = jdbc;
        this.labs = labs;
    }

    void add(CorrectiveAction action) {
        jdbc.sql("""
                insert into incident_actions (id, incident_id, words, control_level, owner, due_on, added_by, added_at)
                values (:id, :incident, :words, :level, :owner, :due, :by, :at)""")
                .param("id", action.id())
                .param("incident", action.incident().value())
                .param("words", action.words())
                .param("level", action.level().name())
                .param("owner", action.owner().value())
                .param("due", action.dueOn())
                .param("by", action.addedBy().value())
                .param("at", SqlTime.toSql(action.addedAt()))
                .update();
    }

    boolean done(UUID id, CorrectiveAction.Done done) {
        return jdbc.sql("""
                update incident_actions set done_by = :by, done_at = :at, done_words = :words, check_due_on = :checkDue
                where id = :id and done_by is null""")
                        .param("by", done.by().value())
                        .param("at", SqlTime.toSql(done.at()))
                        .param("words", done.words())
                        .param("checkDue", done.checkDueOn())
                        .param("id", id)
                        .update()
                == 1;
    }

    boolean checked(UUID id, CorrectiveAction.Checked checked) {
        return jdbc.sql("""
                update incident_actions set checked_by = :by, checked_at = :at, effective = :effective,
                    check_words = :words
                where id = :id and done_by is not null and checked_by is null""")
                        .param("by", checked.by().value())
                        .param("at", SqlTime.toSql(checked.at()))
                        .param("effective", checked.effective())
                        .param("words", checked.words())
                        .param("id", id)
                        .update()
                == 1;
    }

    Optional<CorrectiveAction> find(UUID id) {
        return jdbc.sql("select * from incident_actions where id = :id")
                .param("id", id)
                .query(ActionRows::action)
                .optional();
    }

    List<CorrectiveAction> of(IncidentId incident) {
        return jdbc.sql("select * from incident_actions where incident_id = :id order by added_at, id")
                .param("id", incident.value())
                .query(ActionRows::action)
                .list();
    }

    List<CorrectiveAction> unsettled(Whose whose, @Nullable Position after, int size) {
        StringBuilder sql =
                new StringBuilder("select * from incident_actions where checked_by is null and " + OF_THE_LAB);
        PersonId person =
                whose instanceof Whose.Of of ? of.owner() : whose instanceof Whose.Others others ? others.than() : null;
        sql.append(person == null ? "" : whose instanceof Whose.Of ? " and owner = :person" : " and owner <> :person");
        sql.append(after == null ? "" : " and (" + NEXT + " > :on or " + NEXT + " = :on and id > :id)");
        sql.append(" order by " + NEXT + ", id fetch first :size rows only");
        var query = jdbc.sql(sql.toString())
                .param("size", size)
                .param("lab", labs.theLab().id().value());
        query = person == null ? query : query.param("person", person.value());
        query = after == null ? query : query.param("on", after.on()).param("id", after.action());
        return query.query(ActionRows::action).list();
    }

    Counted counted(PersonId owner, LocalDate today) {
        return jdbc.sql("""
                select coalesce(sum(case when done_by is null and owner = :owner then 1 else 0 end), 0) as to_do,
                    coalesce(sum(case when %s < :today then 1 else 0 end), 0) as overdue
                from incident_actions where checked_by is null and %s""".formatted(NEXT, OF_THE_LAB))
                .param("lab", labs.theLab().id().value())
                .param("owner", owner.value())
                .param("today", today)
                .query((row, number) -> new Counted(row.getInt("to_do"), row.getInt("overdue")))
                .single();
    }

    private static CorrectiveAction action(ResultSet row, int number) throws SQLException {
        return new CorrectiveAction(
                row.getObject("id", UUID.class),
                new IncidentId(row.getObject("incident_id", UUID.class)),
                row.getString("words"),
                ControlLevel.valueOf(row.getString("control_level")),
                new PersonId(row.getObject("owner", UUID.class)),
                row.getObject("due_on", LocalDate.class),
                new PersonId(row.getObject("added_by", UUID.class)),
                SqlTime.read(row, "added_at"),
                done(row),
                checked(row));
    }

    private static CorrectiveAction.@Nullable Done done(ResultSet row) throws SQLException {
        UUID by = row.getObject("done_by", UUID.class);
        return by == null
                ? null
                : new CorrectiveAction.Done(
                        new PersonId(by),
                        SqlTime.read(row, "done_at"),
                        row.getString("done_words"),
                        row.getObject("check_due_on", LocalDate.class));
    }

    private static CorrectiveAction.@Nullable Checked checked(ResultSet row) throws SQLException {
        UUID by = row.getObject("checked_by", UUID.class);
        return by == null
                ? null
                : new CorrectiveAction.Checked(
                        new PersonId(by),
                        SqlTime.read(row, "checked_at"),
                        row.getBoolean("effective"),
                        row.getString("check_words"));
    }
}
