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
import org.jspecify.annotations.Nullable;
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

    /** The latest that stand of the lab. */
    List<LegalHold> standing(LabId lab, int atMost) {
        return jdbc.sql("""
                select * from retention_holds where lab_id = :lab and lifted_at is null
                order by placed_at desc, id desc fetch first :most rows only""")
                .param("lab", lab.value())
                .param("most", atMost)
                .query(HoldRows::hold)
                .list();
    }

    List<LegalHold> lifted(LabId lab, @Nullable LegalHold after, int atMost) {
        var query = jdbc.sql("select * from retention_holds where lab_id = :lab and lifted_at is not null"
                        + (after == null ? "" : " and (placed_at < :at or placed_at = :at and id < :id)")
                        + " order by placed_at desc, id desc fetch first :most rows only")
                .param("lab", lab.value())
                .param("most", atMost);
        query = after == null
                ? query
                : query.param("at", SqlTime.toSql(after.placedAt())).param("id", after.id());
        return query.query(HoldRows::hold).list();
    }

    /** Those that stand of the lab. */
    List<LegalHold> standing(LabId lab) {
        return jdbc.sql("""
                select * from retention_holds where lab_id = :lab and lifted_at is null
                order by placed_at, id""").param("lab", lab.value()).query(HoldRows::hold).list();
    }

    /** Those that stand of other labs on a person, a run or an incident: an account is the same everywhere. */
    List<LegalHold> standingElsewhere(LabId lab) {
        return jdbc.sql("""
                select * from retention_holds where lab_id <> :lab and about <> 'KIND' and lifted_at is null
                order by placed_at, id""").param("lab", lab.value()).query(HoldRows::hold).list();
    }

    /** Whose holds. */
    enum Whose {
        THE_LABS("h.lab_id = :lab"),
        OTHER_LABS("h.lab_id <> :lab");

        private final String sql;

        Whose(String sql) {
            this.sql = sql;
        }
    }

    /** People of the runs and incidents that are held. */
    Set<UUID> namedInHeldThings(LabId lab, Whose whose) {
        return ids(lab, whose, """
                select p.person_id from run_people p join retention_holds h on h.subject = p.run_id
                    where h.about = 'RUN' and h.lifted_at is null and %1$s
                union select p.person_id from incident_people p join retention_holds h on h.subject = p.incident_id
                    where h.about = 'INCIDENT' and h.lifted_at is null and %1$s
                union select r.person_id from run_people r join incidents i on i.run_id = r.run_id
                    join retention_holds h on h.subject = i.id
                    where h.about = 'INCIDENT' and h.lifted_at is null and %1$s
                union select i.reporter from incidents i join retention_holds h on h.subject = i.id
                    where h.about = 'INCIDENT' and h.lifted_at is null and i.reporter is not null and %1$s""");
    }

    /** Texts of programs that ran in the runs that are held, or to which held incidents belong; labs share texts. */
    Set<UUID> textsOfHeldRuns(LabId lab, Whose whose) {
        return ids(lab, whose, """
                select v.content_id from program_revisions v join runs r on r.revision_id = v.id
                    join retention_holds h on h.subject = r.id
                    where h.about = 'RUN' and h.lifted_at is null and %1$s
                union select v.content_id from program_revisions v join runs r on r.revision_id = v.id
                    join incidents i on i.run_id = r.id join retention_holds h on h.subject = i.id
                    where h.about = 'INCIDENT' and h.lifted_at is null and %1$s""");
    }

    private Set<UUID> ids(LabId lab, Whose whose, String sql) {
        return new HashSet<>(jdbc.sql(sql.formatted(whose.sql))
                .param("lab", lab.value())
                .query(UUID.class)
                .list());
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

    /** Those of the lab that stand on it; what other labs hold is theirs to tell. */
    List<LegalHold> standingOn(LabId lab, About about, UUID subject) {
        return jdbc.sql("""
                select * from retention_holds
                where about = :about and subject = :subject and lifted_at is null and lab_id = :lab
                order by placed_at desc, id desc""")
                .param("lab", lab.value())
                .param("about", about.name())
                .param("subject", subject)
                .query(HoldRows::hold)
                .list();
    }

    Optional<LegalHold> find(LabId lab, UUID id) {
        return jdbc.sql("select * from retention_holds where id = :id and lab_id = :lab")
                .param("lab", lab.value())
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
