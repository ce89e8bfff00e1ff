package org.standclear.booking;

import java.sql.ResultSet;
import java.sql.SQLException;
import java.time.Instant;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.UUID;
import java.util.function.Function;
import org.jspecify.annotations.Nullable;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.stereotype.Repository;
import org.standclear.booking.WaitingList.Waiting;
import org.standclear.platform.ids.AssignmentId;
import org.standclear.platform.ids.CellId;
import org.standclear.platform.ids.CourseId;
import org.standclear.platform.ids.Id;
import org.standclear.platform.ids.LabId;
import org.standclear.platform.ids.PersonId;
import org.standclear.platform.lab.Labs;
import org.standclear.platform.time.SqlTime;

/** The waiting list as the table has it; ended waits stay there as history. */
@Repository
class WaitRows {

    /** So many offers can be let go before a wait ends. */
    static final int PASSES = 3;

    private final JdbcClient jdbc;
    private final Labs labs;

    WaitRows(JdbcClient jdbc, Labs labs) {
        this.jdbc = jdbc;
        this.labs = labs;
    }

    /** How a wait ended. */
    enum End {
        BOOKED,
        LEFT,
        PAST,
        PASSED
    }

    void insert(LabId lab, Waiting one) {
        jdbc.sql("""
                insert into booking_waits (id, lab_id, person_id, cell_id, course_id, assignment_id, from_at, until_at,
                    goes_first, passes, joined_at)
                values (:id, :lab, :person, :cell, :course, :assignment, :from, :until, :first, :passes, :at)""")
                .param("id", one.id())
                .param("lab", lab.value())
                .param("person", one.person().value())
                .param("cell", value(one.cell()))
                .param("course", value(one.course()))
                .param("assignment", value(one.assignment()))
                .param("from", SqlTime.toSql(one.from()))
                .param("until", SqlTime.toSql(one.until()))
                .param("first", one.goesFirst())
                .param("passes", one.passes())
                .param("at", SqlTime.toSql(one.joinedAt()))
                .update();
    }

    /** The wait if it is one of this lab. */
    Optional<Waiting> find(UUID id) {
        return where(
                        "id = :id and lab_id = :lab",
                        Map.of("id", id, "lab", labs.theLab().id().value()))
                .stream()
                .findFirst();
    }

    /** The wait, if it stands and nobody else is at it. */
    Optional<Waiting> lockLive(UUID id) {
        return where("id = :id and ended_at is null for update skip locked", Map.of("id", id)).stream()
                .findFirst();
    }

    /** The wait, if it stands when whoever is at it has ended. */
    Optional<Waiting> lockStanding(UUID id) {
        return where("id = :id and ended_at is null for update", Map.of("id", id)).stream()
                .findFirst();
    }

    /** Whether the person took an offer of a first place that began then, and did not give that booking back. */
    boolean ledToBooking(PersonId person, Instant joinedAt) {
        return jdbc.sql("""
                select count(*) from booking_waits w join booking_offers o on o.wait_id = w.id
                    join bookings b on b.operator_id = w.person_id and b.cell_id = o.cell_id and b.starts_at = o.starts_at
                where w.person_id = :person and w.joined_at = :at and w.goes_first and o.state = 'TAKEN'
                  and b.state not in ('CANCELLED', 'MOVED_BY_STAFF')""")
                        .param("person", person.value())
                        .param("at", SqlTime.toSql(joinedAt))
                        .query(Integer.class)
                        .single()
                > 0;
    }

    List<Waiting> live(LabId lab) {
        return where("lab_id = :lab and ended_at is null order by joined_at, id", Map.of("lab", lab.value()));
    }

    List<Waiting> liveOf(PersonId person) {
        return where(
                "lab_id = :lab and person_id = :person and ended_at is null order by from_at, joined_at",
                Map.of("lab", labs.theLab().id().value(), "person", person.value()));
    }

    boolean end(UUID id, End how, Instant at) {
        return jdbc.sql("update booking_waits set ended_at = :at, ended_how = :how where id = :id and ended_at is null")
                        .param("at", SqlTime.toSql(at))
                        .param("how", how.name())
                        .param("id", id)
                        .update()
                == 1;
    }

    /** An offer was let go; who lets several go is not asked for ever. */
    void pass(UUID id, Instant at) {
        jdbc.sql("update booking_waits set passes = passes + 1 where id = :id")
                .param("id", id)
                .update();
        jdbc.sql("""
                update booking_waits set ended_at = :at, ended_how = 'PASSED'
                where id = :id and ended_at is null and passes >= :allowed""")
                .param("at", SqlTime.toSql(at))
                .param("id", id)
                .param("allowed", PASSES)
                .update();
    }

    int endPast(Instant now) {
        return jdbc.sql("""
                update booking_waits set ended_at = :now, ended_how = 'PAST'
                where lab_id = :lab and ended_at is null and until_at <= :now""")
                .param("lab", labs.theLab().id().value())
                .param("now", SqlTime.toSql(now))
                .update();
    }

    /** How many slots each person held to the end, or still holds, since the instant. */
    Map<PersonId, Integer> turnsSince(LabId lab, Instant since) {
        return jdbc
                .sql("""
                select operator_id, count(*) as turns from bookings
                where lab_id = :lab and ends_at > :since
                  and state not in ('CANCELLED', 'LATE_CANCELLED', 'MISSED', 'MOVED_BY_STAFF')
                group by operator_id""")
                .param("lab", lab.value())
                .param("since", SqlTime.toSql(since))
                .query((row, number) ->
                        Map.entry(new PersonId(row.getObject("operator_id", UUID.class)), row.getInt("turns")))
                .list()
                .stream()
                .collect(java.util.stream.Collectors.toMap(Map.Entry::getKey, Map.Entry::getValue));
    }

    private List<Waiting> where(String condition, Map<String, ?> values) {
        return jdbc.sql("select * from booking_waits where " + condition)
                .params(values)
                .query(WaitRows::waiting)
                .list();
    }

    private static @Nullable UUID value(@Nullable Id id) {
        return id == null ? null : id.value();
    }

    private static Waiting waiting(ResultSet row, int number) throws SQLException {
        return new Waiting(
                row.getObject("id", UUID.class),
                new PersonId(row.getObject("person_id", UUID.class)),
                nullable(row, "cell_id", CellId::new),
                SqlTime.read(row, "from_at"),
                SqlTime.read(row, "until_at"),
                nullable(row, "course_id", CourseId::new),
                nullable(row, "assignment_id", AssignmentId::new),
                row.getBoolean("goes_first"),
                row.getInt("passes"),
                SqlTime.read(row, "joined_at"),
                null);
    }

    private static <T extends Id> @Nullable T nullable(ResultSet row, String column, Function<UUID, T> id)
            throws SQLException {
        UUID value = row.getObject(column, UUID.class);
        return value == null ? null : id.apply(value);
    }
}
