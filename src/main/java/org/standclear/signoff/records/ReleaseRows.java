package org.standclear.signoff.records;

import java.sql.ResultSet;
import java.sql.SQLException;
import java.time.Instant;
import java.util.List;
import java.util.Optional;
import java.util.UUID;
import org.jspecify.annotations.Nullable;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.stereotype.Repository;
import org.standclear.platform.ids.BookingId;
import org.standclear.platform.ids.CellId;
import org.standclear.platform.ids.LabId;
import org.standclear.platform.ids.PersonId;
import org.standclear.platform.ids.ReleaseId;
import org.standclear.platform.ids.RevisionId;
import org.standclear.platform.time.SqlTime;
import org.standclear.program.Revision;
import org.standclear.signoff.LapseRule;
import org.standclear.signoff.Release;

/** Releases in the database; what a release is about never changes, only that it is used, lapses or ends. */
@Repository
class ReleaseRows {

    private final JdbcClient jdbc;

    ReleaseRows(JdbcClient jdbc) {
        this.jdbc = jdbc;
    }

    Optional<Release> find(ReleaseId id) {
        return jdbc.sql("select * from signoff_releases where id = :id")
                .param("id", id.value())
                .query(ReleaseRows::release)
                .optional();
    }

    /** The one issued last first: by the round of its list, since a clock can be set back between two. */
    List<Release> of(BookingId booking) {
        return jdbc.sql("""
                select r.* from signoff_releases r join signoff_sheets s on s.id = r.sheet_id
                where r.booking_id = :booking order by s.round_number desc""")
                .param("booking", booking.value())
                .query(ReleaseRows::release)
                .list();
    }

    Optional<Release> latest(BookingId booking) {
        return of(booking).stream().findFirst();
    }

    /** Whether the revision was ever run through on the cell version; a run that was cut short does not count. */
    boolean hasRun(RevisionId revision, CellId cell, int cellVersion) {
        return jdbc.sql("""
                select count(*) from signoff_releases where revision_id = :revision and cell_id = :cell
                    and cell_version = :version and run_through_at is not null""")
                        .param("revision", revision.value())
                        .param("cell", cell.value())
                        .param("version", cellVersion)
                        .query(Integer.class)
                        .single()
                > 0;
    }

    /** Adds it, with the number of the latest revision that its program has now. */
    void add(Release release, int lastRevision) {
        jdbc.sql("""
                insert into signoff_releases (id, booking_id, sheet_id, cell_id, cell_version, revision_id, program_sha256,
                    declaration_sha256, tool, payload_kg, operator_id, attendant_id, releaser_id, code, first_run,
                    pass_limit, issued_at, start_by, window_end, last_revision, live)
                values (:id, :booking, :sheet, :cell, :cellVersion, :revision, :program, :declaration, :tool, :payload,
                    :operator, :attendant, :releaser, :code, :firstRun, :passLimit, :issuedAt, :startBy, :windowEnd, :last, 1)""")
                .param("id", release.id().value())
                .param("booking", release.booking().value())
                .param("sheet", release.sheet())
                .param("cell", release.cell().value())
                .param("cellVersion", release.cellVersion())
                .param("revision", release.revision().value())
                .param("program", release.programSha256())
                .param("declaration", release.declarationSha256())
                .param("tool", release.tool())
                .param("payload", release.payloadKg())
                .param("operator", release.operator().value())
                .param("attendant", release.attendant().value())
                .param("releaser", release.releaser().value())
                .param("code", release.code())
                .param("firstRun", release.firstRun())
                .param("passLimit", release.passLimit())
                .param("issuedAt", SqlTime.toSql(release.issuedAt()))
                .param("startBy", SqlTime.toSql(release.startBy()))
                .param("windowEnd", SqlTime.toSql(release.windowEnd()))
                .param("last", lastRevision)
                .update();
    }

    /** Whether the revision of the same program came after the release. */
    boolean cameAfter(Release release, Revision revision) {
        Integer last = jdbc.sql("select last_revision from signoff_releases where id = :id")
                .param("id", release.id().value())
                .query((row, number) -> row.getObject(1, Integer.class))
                .list()
                .get(0);
        return last == null ? revision.uploadedAt().isAfter(release.issuedAt()) : revision.number() > last;
    }

    /** A release that binds somebody: a start can use it, or its run goes on. */
    record Binding(CellId cell, Instant starts, Instant ends) {}

    /** The release of another booking that binds the person, as the unique indexes have it. */
    Optional<Binding> binding(PersonId person, BookingId otherThan, Instant now) {
        return jdbc.sql("""
                select b.cell_id, b.starts_at, b.ends_at from signoff_releases r join bookings b on b.id = r.booking_id
                where r.live = 1 and b.id <> :booking and (r.used_at is not null or r.start_by > :now)
                  and (r.operator_id = :person or r.attendant_id = :person and b.attendant_id = :person)
                order by b.starts_at, b.id fetch first 1 row only""")
                .param("booking", otherThan.value())
                .param("now", SqlTime.toSql(now))
                .param("person", person.value())
                .query((row, number) -> new Binding(
                        new CellId(id(row, "cell_id")), SqlTime.read(row, "starts_at"), SqlTime.read(row, "ends_at")))
                .optional();
    }

    /** A booking and whose it is: a person may stand at an e-stop of any lab. */
    record Waiting(BookingId booking, LabId lab) {}

    /** Bookings, of all labs, with a release that waits for its start with this person at its e-stop. */
    List<Waiting> waitingWith(PersonId attendant) {
        return jdbc.sql("""
                select b.id, b.lab_id from signoff_releases r join bookings b on b.id = r.booking_id
                where r.live = 1 and r.used_at is null and r.attendant_id = :person order by b.id""")
                .param("person", attendant.value())
                .query((row, number) -> new Waiting(new BookingId(id(row, "id")), new LabId(id(row, "lab_id"))))
                .list();
    }

    boolean use(ReleaseId id, Instant at) {
        return jdbc.sql("update signoff_releases set used_at = :at where id = :id and used_at is null and live = 1")
                        .param("at", SqlTime.toSql(at))
                        .param("id", id.value())
                        .update()
                == 1;
    }

    /** Whether the person stood at the e-stop in a part of the booking's run that is over. */
    boolean hasAttended(BookingId booking, PersonId person) {
        return jdbc.sql("""
                select count(*) from signoff_releases r where r.booking_id = :booking and r.used_at is not null
                    and (r.attendant_id = :person or exists (select 1 from signoff_handovers h
                        where h.release_id = r.id and h.from_person = :person))""")
                        .param("booking", booking.value())
                        .param("person", person.value())
                        .query(Integer.class)
                        .single()
                > 0;
    }

    /**
     * Whether any program was run through on the cell whose list was opened after the numbered tag was hung. Of years of
     * runs only the latest by their time are read: after a clock was set back far a first run may be watched once more.
     */
    boolean hasRunSince(CellId cell, long tag) {
        return jdbc.sql("""
                select count(*) from (select s.last_tag from signoff_releases r join signoff_sheets s on s.id = r.sheet_id
                    where r.cell_id = :cell and r.run_through_at is not null
                    order by r.run_through_at desc fetch first 50 rows only) latest
                where latest.last_tag >= :tag""")
                        .param("cell", cell.value())
                        .param("tag", tag)
                        .query(Integer.class)
                        .single()
                > 0;
    }

    void ranThrough(ReleaseId id, Instant at) {
        jdbc.sql("update signoff_releases set run_through_at = :at where id = :id and run_through_at is null")
                .param("at", SqlTime.toSql(at))
                .param("id", id.value())
                .update();
    }

    boolean lapse(ReleaseId id, LapseRule rule, String because, Instant at) {
        return jdbc.sql("""
                update signoff_releases set lapsed_at = :at, lapse_rule = :rule, because = :because, live = null
                where id = :id and lapsed_at is null and (live = 1 or used_at is null)""")
                        .param("at", SqlTime.toSql(at))
                        .param("rule", rule.code())
                        .param("because", because)
                        .param("id", id.value())
                        .update()
                == 1;
    }

    /** Releases that ran out before anybody looked hold nobody any more; their lapse is written at the next look. */
    void freeRunOut(Instant now) {
        jdbc.sql("update signoff_releases set live = null where live = 1 and used_at is null and start_by <= :now")
                .param("now", SqlTime.toSql(now))
                .update();
    }

    void end(ReleaseId id, Instant at) {
        jdbc.sql("update signoff_releases set live = null, ended_at = :at where id = :id and used_at is not null"
                        + " and ended_at is null")
                .param("at", SqlTime.toSql(at))
                .param("id", id.value())
                .update();
    }

    private static Release release(ResultSet row, int number) throws SQLException {
        return new Release(
                new ReleaseId(id(row, "id")),
                new BookingId(id(row, "booking_id")),
                id(row, "sheet_id"),
                new CellId(id(row, "cell_id")),
                row.getInt("cell_version"),
                new RevisionId(id(row, "revision_id")),
                row.getString("program_sha256"),
                row.getString("declaration_sha256"),
                row.getString("tool"),
                row.getObject("payload_kg", Double.class),
                new PersonId(id(row, "operator_id")),
                new PersonId(id(row, "attendant_id")),
                new PersonId(id(row, "releaser_id")),
                row.getString("code"),
                row.getBoolean("first_run"),
                row.getObject("pass_limit", Integer.class),
                SqlTime.read(row, "issued_at"),
                SqlTime.read(row, "start_by"),
                SqlTime.read(row, "window_end"),
                SqlTime.readNullable(row, "used_at"),
                lapsed(row),
                row.getString("suspended_because"));
    }

    private static Release.@Nullable Lapsed lapsed(ResultSet row) throws SQLException {
        Instant at = SqlTime.readNullable(row, "lapsed_at");
        return at == null
                ? null
                : new Release.Lapsed(at, LapseRule.of(row.getString("lapse_rule")), row.getString("because"));
    }

    private static UUID id(ResultSet row, String column) throws SQLException {
        return row.getObject(column, UUID.class);
    }
}
