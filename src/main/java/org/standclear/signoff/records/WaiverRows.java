package org.standclear.signoff.records;

import java.sql.ResultSet;
import java.sql.SQLException;
import java.time.Instant;
import java.util.List;
import java.util.Optional;
import java.util.UUID;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.stereotype.Repository;
import org.standclear.platform.ids.AnswerId;
import org.standclear.platform.ids.BookingId;
import org.standclear.platform.ids.PersonId;
import org.standclear.platform.ids.ReleaseId;
import org.standclear.platform.time.SqlTime;
import org.standclear.signoff.Waiver;

/** Waivers in the database; one is never changed but for its use. */
@Repository
class WaiverRows {

    private final JdbcClient jdbc;

    WaiverRows(JdbcClient jdbc) {
        this.jdbc = jdbc;
    }

    /** Latest first. */
    List<Waiver> of(BookingId booking) {
        return jdbc.sql("select * from signoff_waivers where booking_id = :booking order by given_at desc, id desc")
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
                insert into signoff_waivers (id, booking_id, answer_id, checks, reason, given_by, given_at, expires_at)
                values (:id, :booking, :answer, :checks, :reason, :by, :at, :expires)""")
                .param("id", waiver.id())
                .param("booking", waiver.booking().value())
                .param("answer", waiver.answer().value())
                .param("checks", String.join(" ", waiver.checks()))
                .param("reason", waiver.reason())
                .param("by", waiver.givenBy().value())
                .param("at", SqlTime.toSql(waiver.givenAt()))
                .param("expires", SqlTime.toSql(waiver.expiresAt()))
                .update();
    }

    boolean use(UUID waiver, ReleaseId release, Instant at) {
        return jdbc.sql("""
                update signoff_waivers set used_at = :at, release_id = :release
                where id = :id and used_at is null and expires_at > :at""")
                        .param("at", SqlTime.toSql(at))
                        .param("release", release.value())
                        .param("id", waiver)
                        .update()
                == 1;
    }

    private static Waiver waiver(ResultSet row, int number) throws SQLException {
        return new Waiver(
                row.getObject("id", UUID.class),
                new BookingId(row.getObject("booking_id", UUID.class)),
                new AnswerId(row.getObject("answer_id", UUID.class)),
                List.of(row.getString("checks").split(" ")),
                row.getString("reason"),
                new PersonId(row.getObject("given_by", UUID.class)),
                SqlTime.read(row, "given_at"),
                SqlTime.read(row, "expires_at"),
                SqlTime.readNullable(row, "used_at"));
    }
}
