package org.standclear.retention.records;

import java.sql.ResultSet;
import java.sql.SQLException;
import java.sql.Types;
import java.time.Instant;
import java.time.LocalDate;
import java.util.HashSet;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.UUID;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.stereotype.Repository;
import org.standclear.platform.ids.LabId;
import org.standclear.platform.ids.PersonId;
import org.standclear.platform.retention.Concern.About;
import org.standclear.platform.retention.RecordKind;
import org.standclear.platform.time.SqlTime;
import org.standclear.retention.LegalHold;
import org.standclear.retention.LegalHold.Lifted;
import org.standclear.retention.LegalHold.Target;

/** The table of holds. */
@Repository
class HoldRows {

    private static final String ON_A_KIND = "KIND";

    private final JdbcClient jdbc;

    HoldRows(JdbcClient jdbc) {
        this.jdbc = jdbc;
    }

    void insert(LabId lab, LegalHold hold) {
        Target.One one = hold.target() instanceof Target.One found ? found : null;
        Target.Span span = hold.target() instanceof Target.Span found ? found : null;
        jdbc.sql("""
                insert into retention_holds (id, lab_id, about, subject, kind, from_day, until_day, reason, authority,
                    placed_by, placed_at)
                values (:id, :lab, :about, :subject, :kind, :from, :until, :reason, :authority, :by, :at)""")
                .param("id", hold.id())
                .param("lab", lab.value())
                .param("about", one == null ? ON_A_KIND : one.about().name())
                .param("subject", one == null ? null : one.id(), Types.OTHER)
                .param("kind", span == null ? null : span.kind().name(), Types.VARCHAR)
                .param("from", span == null ? null : span.from(), Types.DATE)
                .param("until", span == null ? null : span.until(), Types.DATE)
                .param("reason", hold.reason())
                .param("authority", hold.authority())
                .param("by", hold.placedBy().value())
                .param("at", SqlTime.toSql(hold.placedAt()))
                .update();
    }

    /** Whether it stood, and was placed by somebody else. */
    boolean lift(UUID id, Lifted lifted) {
        return jdbc.sql("""
                update retention_holds set lifted_by = :by, lifted_at = :at, lift_reason = :reason
                where id = :id and lifted_at is null and placed_by <> :by""")
                        .param("by", lifted.by().value())
                        .param("at", SqlTime.toSql(lifted.at()))
                        .param("reason", lifted.reason())
                        .param("id", id)
                        .update()
                == 1;
    }

    List<LegalHold> all(LabId lab, int atMost) {
        return jdbc.sql("""
                select * from retention_holds where lab_id = :lab
                order by case when lifted_at is null then 0 else 1 end, placed_at desc, id desc
                fetch first :most rows only""")
                .param("lab", lab.value())
                .param("most", atMost)
                .query(HoldRows::hold)
                .list();
    }

    /** Those of the lab, and those of other labs on a person: an account is the same everywhere. */
    List<LegalHold> standing(LabId lab) {
        return jdbc.sql("""
                select * from retention_holds where (lab_id = :lab or about <> 'KIND') and lifted_at is null
                order by placed_at, id""").param("lab", lab.value()).query(HoldRows::hold).list();
    }

    /** People of the runs and incidents that are held in any lab: an account is the same everywhere. */
    Set<UUID> namedInHeldThings() {
        return new HashSet<>(jdbc.sql("""
                select p.person_id from run_people p join retention_holds h on h.subject = p.run_id
                    where h.about = 'RUN' and h.lifted_at is null
                union select p.person_id from incident_people p join retention_holds h on h.subject = p.incident_id
                    where h.about = 'INCIDENT' and h.lifted_at is null
                union select r.person_id from run_people r join incidents i on i.run_id = r.run_id
                    join retention_holds h on h.subject = i.id
                    where h.about = 'INCIDENT' and h.lifted_at is null
                union select i.reporter from incidents i join retention_holds h on h.subject = i.id
                    where h.about = 'INCIDENT' and h.lifted_at is null and i.reporter is not null""").query(UUID.class).list());
    }

    /** Texts of programs that ran in the runs that are held, or to which held incidents belong; labs share texts. */
    Set<UUID> textsOfHeldRuns() {
        return new HashSet<>(jdbc.sql("""
                select v.content_id from program_revisions v join runs r on r.revision_id = v.id
                    join retention_holds h on h.subject = r.id
                    where h.about = 'RUN' and h.lifted_at is null
                union select v.content_id from program_revisions v join runs r on r.revision_id = v.id
                    join incidents i on i.run_id = r.id join retention_holds h on h.subject = i.id
                    where h.about = 'INCIDENT' and h.lifted_at is null""").query(UUID.class).list());
    }

    /** Whether the person is whom a hold is about, or has a part in the run or incident that it holds. */
    boolean isAbout(UUID hold, UUID person) {
        return jdbc.sql("""
                select count(*) from retention_holds h where h.id = :hold and (
                    (h.about = 'PERSON' and h.subject = :person)
                    or (h.about = 'RUN' and (
                        exists (select 1 from run_people p where p.run_id = h.subject and p.person_id = :person)
                        or exists (select 1 from incident_people p join incidents i on i.id = p.incident_id
                            where i.run_id = h.subject and p.person_id = :person)))
                    or (h.about = 'INCIDENT' and (
                        exists (select 1 from incident_people p where p.incident_id = h.subject and p.person_id = :person)
                        or exists (select 1 from incidents i where i.id = h.subject and i.reporter = :person)
                        or exists (select 1 from run_people p join incidents i on i.run_id = p.run_id
                            where i.id = h.subject and p.person_id = :person))))""")
                        .param("hold", hold)
                        .param("person", person)
                        .query(Integer.class)
                        .single()
                > 0;
    }

    List<LegalHold> standingOn(About about, UUID subject) {
        return jdbc.sql("""
                select * from retention_holds where about = :about and subject = :subject and lifted_at is null
                order by placed_at desc, id desc""")
                .param("about", about.name())
                .param("subject", subject)
                .query(HoldRows::hold)
                .list();
    }

    Optional<LegalHold> find(UUID id) {
        return jdbc.sql("select * from retention_holds where id = :id")
                .param("id", id)
                .query(HoldRows::hold)
                .optional();
    }

    private static LegalHold hold(ResultSet row, int number) throws SQLException {
        String about = row.getString("about");
        Instant liftedAt = SqlTime.readNullable(row, "lifted_at");
        Target target = about.equals(ON_A_KIND)
                ? new Target.Span(
                        RecordKind.valueOf(row.getString("kind")),
                        row.getObject("from_day", LocalDate.class),
                        row.getObject("until_day", LocalDate.class))
                : new Target.One(About.valueOf(about), row.getObject("subject", UUID.class));
        return new LegalHold(
                row.getObject("id", UUID.class),
                target,
                row.getString("reason"),
                row.getString("authority"),
                new PersonId(row.getObject("placed_by", UUID.class)),
                SqlTime.read(row, "placed_at"),
                liftedAt == null
                        ? null
                        : new Lifted(
                                new PersonId(row.getObject("lifted_by", UUID.class)),
                                liftedAt,
                                row.getString("lift_reason")));
    }
}
