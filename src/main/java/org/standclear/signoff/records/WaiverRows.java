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
import org.standclear.platform.ids.AnswerId;
import org.standclear.platform.ids.BookingId;
import org.standclear.platform.ids.PersonId;
import org.standclear.platform.ids.ReleaseId;
import org.standclear.platform.time.SqlTime;
import org.standclear.signoff.Waiver;
import org.standclear.signoff.Waiver.TakenBack;

/** Waivers in the database; one is never changed but for its use, or when it is taken back. */
@Repository
class WaiverRows {

    private final JdbcClient jdbc;

    WaiverRows(JdbcClient jdbc) {
        this.jdbc = jdbc;
    }

    /** Latest first. */
    List<Waiver> of(BookingId booking) {
        return jdbc.sql("""
                select w.*, t.taken_at, t.taken_by, t.reason as taken_reason from signoff_waivers w
                left join signoff_waivers_taken_back t on t.waiver_id = w.id
                where w.booking_id = :booking order by w.given_at desc, w.id desc""")
                .param("booking", booking.value())
                .query(WaiverRows::waiver)
                .list();
    }

    /** The one that stands for that answer. */
    Optional<Waiver> standing(BookingId booking, AnswerId answer, Instant now) {
        return of(booking).stream()
                .filter(waiver -> waiver.answer().equals(answer) && waiver.standsAt(now))
                .findFirst();
    }

    void add(Waiver waiver) {
        jdbc.sql("""
                insert into signoff_waivers (id, booking_id, answer_id, checks, reason, lines_read, given_by, given_at,
                    expires_at)
                values (:id, :booking, :answer, :checks, :reason, :read, :by, :at, :expires)""")
                .param("id", waiver.id())
                .param("booking", waiver.booking().value())
                .param("answer", waiver.answer().value())
                .param("checks", String.join(" ", waiver.checks()))
                .param("reason", waiver.reason())
                .param("read", waiver.linesRead())
                .param("by", waiver.givenBy().value())
                .param("at", SqlTime.toSql(waiver.givenAt()))
                .param("expires", SqlTime.toSql(waiver.expiresAt()))
                .update();
    }

    boolean use(UUID waiver, ReleaseId release, Instant at) {
        return jdbc.sql("""
                update signoff_waivers set used_at = :at, release_id = :release
                where id = :id and used_at is null and expires_at > :at
                    and (lines_read is not null or checks not like '%coverage%')
                    and not exists (select 1 from signoff_waivers_taken_back t where t.waiver_id = signoff_waivers.id)""")
                        .param("at", SqlTime.toSql(at))
                        .param("release", release.value())
                        .param("id", waiver)
                        .update()
                == 1;
    }

    void takeBack(UUID waiver, TakenBack taken) {
        jdbc.sql("""
                insert into signoff_waivers_taken_back (waiver_id, taken_by, taken_at, reason)
                values (:id, :by, :at, :reason)""")
                .param("id", waiver)
                .param("by", taken.by().value())
                .param("at", SqlTime.toSql(taken.at()))
                .param("reason", taken.reason())
                .update();
    }

    private static Waiver waiver(ResultSet row, int number) throws SQLException {
        return new Waiver(
                row.getObject("id", UUID.class),
                new BookingId(row.getObject("booking_id", UUID.class)),
                new AnswerId(row.getObject("answer_id", UUID.class)),
                List.of(row.getString("checks").split(" ")),
                row.getString("reason"),
                row.getString("lines_read"),
                new PersonId(row.getObject("given_by", UUID.class)),
                SqlTime.read(row, "given_at"),
                SqlTime.read(row, "expires_at"),
                SqlTime.readNullable(row, "used_at"),
                takenBack(row));
    }

    private static @Nullable TakenBack takenBack(ResultSet row) throws SQLException {
        Instant at = SqlTime.readNullable(row, "taken_at");
        return at == null
                ? null
                : new TakenBack(new PersonId(row.getObject("taken_by", UUID.class)), at, row.getString("taken_reason"));
    }
}
