package org.standclear.booking;

import java.sql.ResultSet;
import java.sql.SQLException;
import java.time.Duration;
import java.time.Instant;
import java.util.ArrayList;
import java.util.Collection;
import java.util.List;
import java.util.Map;
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
import org.standclear.platform.lab.Labs;
import org.standclear.platform.time.SqlTime;

/** Make-ups as the table has them. One is used while the booking it went into still holds its slot or held it to the end. */
@Repository
class MakeUps {

    /** Long enough for the rest of a term. */
    static final Duration VALID = Duration.ofDays(90);

    /** It went into no booking, or into one that gave it back. */
    private static final String UNUSED = """
            (used_by is null
            or exists (select 1 from bookings b where b.id = used_by and b.state in ('CANCELLED', 'MOVED_BY_STAFF')))""";

    private static final String STANDING = """
            from booking_make_ups m left join bookings b on b.id = m.used_by
            where m.lab_id = :lab and m.person_id in (:people) and m.withdrawn_at is null and m.valid_until > :now
              and (m.used_by is null or b.state in ('CANCELLED', 'MOVED_BY_STAFF'))""";

    private final JdbcClient jdbc;
    private final Labs labs;

    MakeUps(JdbcClient jdbc, Labs labs) {
        this.jdbc = jdbc;
        this.labs = labs;
    }

    /** Grants one; a booking that was lost is made up for once only. */
    boolean grant(LabId lab, PersonId person, @Nullable BookingId lost, String reason, PersonId by, Instant at) {
        if (lost != null && has(lost)) {
            return false;
        }
        jdbc.sql("""
                insert into booking_make_ups (id, lab_id, person_id, granted_by, granted_at, valid_until, lost_booking,
                    reason)
                values (:id, :lab, :person, :by, :at, :until, :lost, :reason)""")
                .param("id", Id.newValue())
                .param("lab", lab.value())
                .param("person", person.value())
                .param("by", by.value())
                .param("at", SqlTime.toSql(at))
                .param("until", SqlTime.toSql(at.plus(VALID)))
                .param("lost", lost == null ? null : lost.value())
                .param("reason", reason)
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

    boolean withdraw(UUID id, String reason, PersonId by, Instant at) {
        return jdbc.sql("""
                update booking_make_ups set withdrawn_by = :by, withdrawn_at = :at, withdrawn_reason = :reason
                where id = :id and lab_id = :lab and withdrawn_at is null and """ + " " + UNUSED)
                        .param("lab", labs.theLab().id().value())
                        .param("by", by.value())
                        .param("at", SqlTime.toSql(at))
                        .param("reason", reason)
                        .param("id", id)
                        .update()
                == 1;
    }

    /** Whether the one for a lost booking went into another; waits for whoever is just using it. */
    boolean usedFor(BookingId lost) {
        List<UUID> granted = jdbc.sql("select id from booking_make_ups where lost_booking = :lost for update")
                .param("lost", lost.value())
                .query(UUID.class)
                .list();
        return !granted.isEmpty()
                && jdbc.sql("select count(*) from booking_make_ups where lost_booking = :lost and not " + UNUSED)
                                .param("lost", lost.value())
                                .query(Integer.class)
                                .single()
                        > 0;
    }

    /** Takes the one for a lost booking back again, unless it was used. */
    void takeBackFor(BookingId lost) {
        jdbc.sql("delete from booking_make_ups where lost_booking = :lost and " + UNUSED)
                .param("lost", lost.value())
                .update();
    }

    /** The next one that the person can use now. */
    Optional<UUID> standing(PersonId person, Instant now) {
        return jdbc.sql("select m.id " + STANDING + " order by m.valid_until, m.id fetch first row only")
                .param("lab", labs.theLab().id().value())
                .param("people", List.of(person.value()))
                .param("now", SqlTime.toSql(now))
                .query(UUID.class)
                .optional();
    }

    /** Which of these people have one that they can use now. */
    Set<PersonId> havers(Collection<PersonId> people, Instant now) {
        if (people.isEmpty()) {
            return Set.of();
        }
        return Set.copyOf(jdbc.sql("select distinct m.person_id " + STANDING)
                .param("lab", labs.theLab().id().value())
                .param("people", people.stream().map(PersonId::value).distinct().toList())
                .param("now", SqlTime.toSql(now))
                .query((row, number) -> new PersonId(row.getObject("person_id", UUID.class)))
                .list());
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
        return read(
                "m.lab_id = :lab and m.person_id = :person",
                "m.granted_at desc, m.id",
                Map.of("lab", labs.theLab().id().value(), "person", person.value()),
                now);
    }

    Optional<MakeUp> find(UUID id, Instant now) {
        return read("m.id = :id", "m.id", Map.of("id", id), now).stream().findFirst();
    }

    /** What stands in the order of use, then what was given since and cannot be used, latest first. */
    List<MakeUp> ofLab(LabId lab, Instant since, Instant now) {
        List<MakeUp> all = read(
                "m.lab_id = :lab and (m.granted_at > :since or m.valid_until > :now)",
                "m.valid_until, m.id",
                Map.of("lab", lab.value(), "since", java.util.Objects.requireNonNull(SqlTime.toSql(since))),
                now);
        List<MakeUp> over = all.stream().filter(one -> !one.stands()).toList();
        List<MakeUp> ordered =
                new ArrayList<>(all.stream().filter(MakeUp::stands).toList());
        for (int place = over.size() - 1; place >= 0; place--) {
            ordered.add(over.get(place));
        }
        return ordered;
    }

    private List<MakeUp> read(String condition, String order, Map<String, ?> values, Instant now) {
        return jdbc.sql("select m.*, case when m.withdrawn_at is null and m.valid_until > :now "
                        + "and (m.used_by is null or b.state in ('CANCELLED', 'MOVED_BY_STAFF')) then 1 else 0 end as stands "
                        + "from booking_make_ups m left join bookings b on b.id = m.used_by where "
                        + condition + " order by " + order)
                .params(values)
                .param("now", SqlTime.toSql(now))
                .query(MakeUps::makeUp)
                .list();
    }

    private static MakeUp makeUp(ResultSet row, int number) throws SQLException {
        String reason = row.getString("reason");
        String withdrawn = row.getString("withdrawn_reason");
        return new MakeUp(
                row.getObject("id", UUID.class),
                new PersonId(row.getObject("person_id", UUID.class)),
                new PersonId(row.getObject("granted_by", UUID.class)),
                SqlTime.read(row, "granted_at"),
                SqlTime.read(row, "valid_until"),
                reason == null ? "" : reason,
                booking(row, "lost_booking"),
                booking(row, "used_by"),
                row.getObject("withdrawn_by") == null ? null : withdrawn == null ? "" : withdrawn,
                row.getInt("stands") == 1);
    }

    private static @Nullable BookingId booking(ResultSet row, String column) throws SQLException {
        UUID id = row.getObject(column, UUID.class);
        return id == null ? null : new BookingId(id);
    }
}
