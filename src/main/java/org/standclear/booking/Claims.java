package org.standclear.booking;

import java.sql.PreparedStatement;
import java.sql.ResultSet;
import java.sql.SQLException;
import java.sql.Types;
import java.time.Instant;
import java.util.Collection;
import java.util.List;
import java.util.UUID;
import java.util.stream.Collectors;
import java.util.stream.IntStream;
import org.jspecify.annotations.Nullable;
import org.springframework.jdbc.core.JdbcTemplate;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.stereotype.Repository;
import org.standclear.platform.ids.Id;
import org.standclear.platform.time.SqlTime;

/** Who and what is claimed from when until when; the table in which the database refuses everything double. */
@Repository
class Claims {

    private static final String INSERT = """
            insert into booking_claims (id, booking_id, closure_id, offer_id, kind, subject, starts_at, ends_at)
            values (?, ?, ?, ?, ?, ?, ?, ?)""";

    private static final String OF_SUBJECT =
            "select * from booking_claims where ends_at > :from and starts_at < :until and subject = :subject";

    private final JdbcClient jdbc;
    private final JdbcTemplate batches;

    Claims(JdbcClient jdbc, JdbcTemplate batches) {
        this.jdbc = jdbc;
        this.batches = batches;
    }

    /** What a claim is on. */
    enum Kind {
        CELL,
        OPERATOR,
        ATTENDANT
    }

    /** One claim, of a booking, of a closure or of an offer. */
    record Claim(
            Kind kind,
            UUID subject,
            Instant start,
            Instant end,
            @Nullable UUID booking,
            @Nullable UUID closure,
            @Nullable UUID offer) {

        static Claim ofBooking(UUID booking, Kind kind, UUID subject, Instant start, Instant end) {
            return new Claim(kind, subject, start, end, booking, null, null);
        }

        static Claim ofClosure(UUID closure, UUID cell, Instant start, Instant end) {
            return new Claim(Kind.CELL, cell, start, end, null, closure, null);
        }

        static Claim ofOffer(UUID offer, Kind kind, UUID subject, Instant start, Instant end) {
            return new Claim(kind, subject, start, end, null, null, offer);
        }
    }

    void add(Claim claim) {
        add(List.of(claim));
    }

    /** All or none, in one round trip to the database. */
    void add(List<Claim> claims) {
        batches.batchUpdate(INSERT, claims, claims.size(), Claims::bind);
    }

    private static void bind(PreparedStatement insert, Claim claim) throws SQLException {
        insert.setObject(1, Id.newValue());
        insert.setObject(2, claim.booking(), Types.OTHER);
        insert.setObject(3, claim.closure(), Types.OTHER);
        insert.setObject(4, claim.offer(), Types.OTHER);
        insert.setString(5, claim.kind().name());
        insert.setObject(6, claim.subject());
        insert.setObject(7, SqlTime.toSql(claim.start()));
        insert.setObject(8, SqlTime.toSql(claim.end()));
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

    void giveUpOffer(UUID offer) {
        jdbc.sql("delete from booking_claims where offer_id = :offer")
                .param("offer", offer)
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
        JdbcClient.StatementSpec asked = jdbc.sql(ofEach(subjects.size()))
                .param("from", SqlTime.toSql(from))
                .param("until", SqlTime.toSql(until));
        int number = 0;
        for (UUID subject : subjects) {
            asked = asked.param("subject" + number++, subject);
        }
        return asked.query(Claims::claim).list();
    }

    /** One part for each subject: H2 follows an index into years of claims only for a single one. */
    private static String ofEach(int subjects) {
        return IntStream.range(0, subjects)
                .mapToObj(number -> OF_SUBJECT + number)
                .collect(Collectors.joining(" union all ", "", " order by starts_at, id"));
    }

    private static Claim claim(ResultSet row, int number) throws SQLException {
        return new Claim(
                Kind.valueOf(row.getString("kind")),
                row.getObject("subject", UUID.class),
                SqlTime.read(row, "starts_at"),
                SqlTime.read(row, "ends_at"),
                row.getObject("booking_id", UUID.class),
                row.getObject("closure_id", UUID.class),
                row.getObject("offer_id", UUID.class));
    }
}
