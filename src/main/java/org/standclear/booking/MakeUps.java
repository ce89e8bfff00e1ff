package org.standclear.booking;

import java.sql.ResultSet;
import java.sql.SQLException;
import java.time.Duration;
import java.time.Instant;
import java.util.HashSet;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.UUID;
import org.jspecify.annotations.Nullable;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.stereotype.Repository;
import org.standclear.booking.Turns.MakeUp;
import org.standclear.platform.ids.BookingId;
import org.standclear.platform.ids.Id;
import org.standclear.platform.ids.LabId;
import org.standclear.platform.ids.PersonId;
import org.standclear.platform.time.SqlTime;

/** Make-ups as the table has them. One is used while the booking it went into still holds its slot or held it to the end. */
@Repository
class MakeUps {

    /** Long enough for the rest of a term. */
    static final Duration VALID = Duration.ofDays(90);

    private static final String STANDING = """
            from booking_make_ups m left join bookings b on b.id = m.used_by
            where m.person_id = :person and m.withdrawn_at is null and m.valid_until > :now
              and (m.used_by is null or b.state in ('CANCELLED', 'MOVED_BY_STAFF'))""";

    private final JdbcClient jdbc;

    MakeUps(JdbcClient jdbc) {
        this.jdbc = jdbc;
    }

    /** Grants one; a booking that was lost is made up for once only. */
    boolean grant(LabId lab, PersonId person, @Nullable BookingId lost, PersonId by, Instant at) {
        if (lost != null && has(lost)) {
            return false;
        }
        jdbc.sql("""
                insert into booking_make_ups (id, lab_id, person_id, granted_by, granted_at, valid_until, lost_booking)
                values (:id, :lab, :person, :by, :at, :until, :lost)""")
                .param("id", Id.newValue())
                .param("lab", lab.value())
                .param("person", person.value())
                .param("by", by.value())
                .param("at", SqlTime.toSql(at))
                .param("until", SqlTime.toSql(at.plus(VALID)))
                .param("lost", lost == null ? null : lost.value())
                .update();
        return true;
    }

    private boolean has(BookingId lost) {
        return jdbc.sql("select count(*) from booking_make_ups where lost_booking = :lost")
                        .param("lost", lost.value())
                        .query(Integer.class)
                        .single()
                > 0;
    }

    boolean withdraw(UUID id, PersonId by, Instant at) {
        return jdbc.sql("""
                update booking_make_ups set withdrawn_by = :by, withdrawn_at = :at
                where id = :id and withdrawn_at is null and used_by is null""")
                        .param("by", by.value())
                        .param("at", SqlTime.toSql(at))
                        .param("id", id)
                        .update()
                == 1;
    }

    /** Takes the one for a lost booking back again, unless it was used. */
    void takeBackFor(BookingId lost) {
        jdbc.sql("delete from booking_make_ups where lost_booking = :lost and used_by is null")
                .param("lost", lost.value())
                .update();
    }

    /** The next one that the person can use now. */
    Optional<UUID> standing(PersonId person, Instant now) {
        return jdbc.sql("select m.id " + STANDING + " order by m.valid_until, m.id fetch first row only")
                .param("person", person.value())
                .param("now", SqlTime.toSql(now))
                .query(UUID.class)
                .optional();
    }

    void use(UUID id, BookingId booking) {
        jdbc.sql("update booking_make_ups set used_by = :booking where id = :id")
                .param("booking", booking.value())
                .param("id", id)
                .update();
    }

    /** A booking that staff move keeps what it was made with. */
    void moveOn(BookingId from, BookingId to) {
        jdbc.sql("update booking_make_ups set used_by = :to where used_by = :from")
                .param("to", to.value())
                .param("from", from.value())
                .update();
    }

    List<MakeUp> of(PersonId person, Instant now) {
        Set<UUID> standing = new HashSet<>(jdbc.sql("select m.id " + STANDING)
                .param("person", person.value())
                .param("now", SqlTime.toSql(now))
                .query(UUID.class)
                .list());
        return jdbc.sql("select * from booking_make_ups where person_id = :person order by granted_at desc, id")
                .param("person", person.value())
                .query((row, number) -> makeUp(row, standing))
                .list();
    }

    private static MakeUp makeUp(ResultSet row, Set<UUID> standing) throws SQLException {
        UUID id = row.getObject("id", UUID.class);
        UUID used = row.getObject("used_by", UUID.class);
        return new MakeUp(
                id,
                SqlTime.read(row, "granted_at"),
                SqlTime.read(row, "valid_until"),
                used == null ? null : new BookingId(used),
                SqlTime.readNullable(row, "withdrawn_at") != null,
                standing.contains(id));
    }
}
