package org.standclear.booking;

import java.sql.ResultSet;
import java.sql.SQLException;
import java.time.Instant;
import java.util.Collection;
import java.util.List;
import java.util.UUID;
import org.jspecify.annotations.Nullable;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.stereotype.Repository;
import org.standclear.platform.ids.Id;
import org.standclear.platform.time.SqlTime;

/** Who and what is claimed from when until when; the table in which the database refuses everything double. */
@Repository
class Claims {

    private final JdbcClient jdbc;

    Claims(JdbcClient jdbc) {
        this.jdbc = jdbc;
    }

    /** What a claim is on. */
    enum Kind {
        CELL,
        OPERATOR,
        ATTENDANT
    }

    /** One claim, of a booking or of a closure. */
    record Claim(
            Kind kind,
            UUID subject,
            Instant start,
            Instant end,
            @Nullable UUID booking,
            @Nullable UUID closure) {

        static Claim ofBooking(UUID booking, Kind kind, UUID subject, Instant start, Instant end) {
            return new Claim(kind, subject, start, end, booking, null);
        }

        static Claim ofClosure(UUID closure, UUID cell, Instant start, Instant end) {
            return new Claim(Kind.CELL, cell, start, end, null, closure);
        }
    }

    void add(Claim claim) {
        jdbc.sql("""
                insert into booking_claims (id, booking_id, closure_id, kind, subject, starts_at, ends_at)
                values (:id, :booking, :closure, :kind, :subject, :start, :end)""")
                .param("id", Id.newValue())
                .param("booking", claim.booking())
                .param("closure", claim.closure())
                .param("kind", claim.kind().name())
                .param("subject", claim.subject())
                .param("start", SqlTime.toSql(claim.start()))
                .param("end", SqlTime.toSql(claim.end()))
                .update();
    }

    void giveUpAllOf(UUID booking) {
        jdbc.sql("delete from booking_claims where booking_id = :booking")
                .param("booking", booking)
                .update();
    }

    void giveUpAttendantOf(UUID booking) {
        jdbc.sql("delete from booking_claims where booking_id = :booking and kind = 'ATTENDANT'")
                .param("booking", booking)
                .update();
    }

    void giveUpClosure(UUID closure) {
        jdbc.sql("delete from booking_claims where closure_id = :closure")
                .param("closure", closure)
                .update();
    }

    /** All claims on any of the subjects that have an instant in common with the span, by start. */
    List<Claim> on(Collection<UUID> subjects, Instant from, Instant until) {
        if (subjects.isEmpty()) {
            return List.of();
        }
        return jdbc.sql("""
                select * from booking_claims
                where subject in (:subjects) and ends_at > :from and starts_at < :until order by starts_at, id""")
                .param("subjects", subjects)
                .param("from", SqlTime.toSql(from))
                .param("until", SqlTime.toSql(until))
                .query(Claims::claim)
                .list();
    }

    private static Claim claim(ResultSet row, int number) throws SQLException {
        return new Claim(
                Kind.valueOf(row.getString("kind")),
                row.getObject("subject", UUID.class),
                SqlTime.read(row, "starts_at"),
                SqlTime.read(row, "ends_at"),
                row.getObject("booking_id", UUID.class),
                row.getObject("closure_id", UUID.class));
    }
}
