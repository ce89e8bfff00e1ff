package org.standclear.booking;

import java.sql.ResultSet;
import java.sql.SQLException;
import java.time.Duration;
import java.time.Instant;
import java.util.Collection;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.UUID;
import java.util.function.Function;
import org.jspecify.annotations.Nullable;
import org.springframework.dao.OptimisticLockingFailureException;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.stereotype.Repository;
import org.standclear.platform.database.RowLocks;
import org.standclear.platform.ids.AssignmentId;
import org.standclear.platform.ids.BookingId;
import org.standclear.platform.ids.CellId;
import org.standclear.platform.ids.CourseId;
import org.standclear.platform.ids.Id;
import org.standclear.platform.ids.LabId;
import org.standclear.platform.ids.PersonId;
import org.standclear.platform.ids.RevisionId;
import org.standclear.platform.lab.Labs;
import org.standclear.platform.time.SqlTime;

/** Bookings as the table has them. */
@Repository
class BookingRows {

    /**
     * H2 would follow the index of the lab into everybody's bookings; that of the operator ends in {@code ends_at}. So the
     * lab is compared where no index is looked for.
     */
    static final String FROM_ON = "operator_id = :operator and ends_at > :from and starts_at >= :from"
            + " and case when lab_id = :lab then 1 else 0 end = 1";

    static final String BEFORE_FOR_ASSIGNMENT = "select * from bookings where operator_id = :operator"
            + " and ends_at < :farthest and assignment_id = :assignment and starts_at < :from"
            + " and case when lab_id = :lab then 1 else 0 end = 1";

    private static final String IN_ORDER = " order by starts_at, id";

    private final JdbcClient jdbc;
    private final Labs labs;
    private final RowLocks locks;

    BookingRows(JdbcClient jdbc, Labs labs, RowLocks locks) {
        this.jdbc = jdbc;
        this.labs = labs;
        this.locks = locks;
    }

    void insert(LabId lab, BookingLife life, PersonId by, Instant at) {
        BookingLife.Entry entry = life.entry();
        jdbc.sql("""
                insert into bookings (id, lab_id, cell_id, starts_at, ends_at, operator_id, attendant_id, course_id,
                    assignment_id, state, outside_quota, made_by, made_at, changed_at, version)
                values (:id, :lab, :cell, :start, :end, :operator, :attendant, :course, :assignment, :state,
                    :outsideQuota, :by, :at, :at, :version)""")
                .param("id", entry.id().value())
                .param("lab", lab.value())
                .param("cell", entry.cell().value())
                .param("start", SqlTime.toSql(entry.start()))
                .param("end", SqlTime.toSql(entry.end()))
                .param("operator", entry.operator().value())
                .param("attendant", value(life.stored().attendant()))
                .param("course", value(entry.course()))
                .param("assignment", value(entry.assignment()))
                .param("state", life.stored().state().name())
                .param("outsideQuota", entry.outsideQuota())
                .param("by", by.value())
                .param("at", SqlTime.toSql(at))
                .param("version", life.stored().version())
                .update();
    }

    /** Stores what an event changed; the row was locked, or read at the version before. */
    void update(BookingLife life, Instant at) {
        BookingLife.Stored stored = life.stored();
        int rows = jdbc.sql("""
                update bookings set attendant_id = :attendant, revision_id = :revision, state = :state,
                    checked_in_at = :checkedIn, started_at = :started, changed_at = :at, version = :version
                where id = :id and version = :before""")
                .param("attendant", value(stored.attendant()))
                .param("revision", value(stored.revision()))
                .param("state", stored.state().name())
                .param("checkedIn", SqlTime.toSql(stored.checkedInAt()))
                .param("started", SqlTime.toSql(stored.startedAt()))
                .param("version", stored.version())
                .param("at", SqlTime.toSql(at))
                .param("id", life.entry().id().value())
                .param("before", stored.version() - 1)
                .update();
        if (rows != 1) {
            throw new OptimisticLockingFailureException(
                    "booking " + life.entry().id() + " changed meanwhile");
        }
    }

    Optional<BookingLife> find(BookingId id) {
        return where("id = :id", Map.of("id", id.value())).stream().findFirst();
    }

    List<BookingLife> all(Collection<BookingId> ids) {
        return ids.isEmpty()
                ? List.of()
                : where(
                        "id in (:ids) order by starts_at desc, id",
                        Map.of("ids", ids.stream().map(BookingId::value).toList()));
    }

    /** Locks the booking if it is one of this lab: whatever changes one is done in its lab. */
    Optional<BookingLife> lock(BookingId id) {
        return where("id = :id and lab_id = :lab" + locks.forChange(), Map.of("id", id.value(), "lab", here())).stream()
                .findFirst();
    }

    /** The booking if it is one of this lab. */
    Optional<BookingLife> findHere(BookingId id) {
        return where("id = :id and lab_id = :lab", Map.of("id", id.value(), "lab", here())).stream()
                .findFirst();
    }

    /** Locks the booking if it is one of this lab and nobody else has locked it. */
    Optional<BookingLife> lockHereUnlessLocked(BookingId id) {
        return where("id = :id and lab_id = :lab" + skippingLocked(), Map.of("id", id.value(), "lab", here())).stream()
                .findFirst();
    }

    /** Locks those that nobody else has locked and whose start is before the instant. */
    List<BookingLife> lockNotCheckedInBefore(Instant start) {
        return where("""
                state in ('BOOKED', 'CHECKED') and lab_id = :lab and checked_in_at is null and starts_at < :start
                order by starts_at, id fetch first 100 rows only""" + skippingLocked(), Map.of("lab", here(), "start", sql(start)));
    }

    /** Locks those that begin in the span and were not looked at for that reminder yet. */
    List<BookingLife> lockToRemind(Instant from, Instant until, int hours) {
        return where(
                """
                state in ('BOOKED', 'CHECKED', 'READY') and lab_id = :lab and starts_at > :from and starts_at <= :until
                and not exists (select 1 from booking_reminders r where r.booking_id = bookings.id and r.hours = :hours)
                order by starts_at, id fetch first 100 rows only""" + skippingLocked(), Map.of("lab", here(), "from", sql(from), "until", sql(until), "hours", hours));
    }

    /** Locks those that begin in the span and have neither a program nor a word that somebody comes. */
    List<BookingLife> lockUnconfirmed(Instant from, Instant until) {
        return where("""
                lab_id = :lab and state = 'BOOKED' and revision_id is null and confirmed_at is null and checked_in_at is null
                and starts_at > :from and starts_at <= :until
                order by starts_at, id""" + skippingLocked(), Map.of("lab", here(), "from", sql(from), "until", sql(until)));
    }

    Instant madeAt(BookingId id) {
        return jdbc.sql("select made_at from bookings where id = :id")
                .param("id", id.value())
                .query((row, number) -> SqlTime.read(row, "made_at"))
                .single();
    }

    List<BookingLife> ofLab(LabId lab, Instant from, Instant until) {
        return where(
                "lab_id = :lab and ends_at > :from and ends_at < :farthest and starts_at < :until order by starts_at, id",
                Map.of("lab", lab.value(), "from", sql(from), "until", sql(until), "farthest", farthest(until)));
    }

    List<BookingLife> ofCell(CellId cell, Instant from, Instant until) {
        return where(
                "cell_id = :cell and ends_at > :from and ends_at < :farthest and starts_at < :until order by starts_at, id",
                Map.of("cell", cell.value(), "from", sql(from), "until", sql(until), "farthest", farthest(until)));
    }

    /** Slots lie within one day's opening hours: without this end a day years ago would be found among all days since. */
    static Object farthest(Instant startsBefore) {
        return sql(startsBefore.plus(Duration.ofDays(1)));
    }

    /** In two parts, since H2 follows no index into an {@code or}; nobody is both operator and attendant. */
    List<BookingLife> ofPerson(PersonId person, Instant endingAfter) {
        return where(
                "operator_id = :person and ends_at > :after union all "
                        + "select * from bookings where attendant_id = :person and ends_at > :after "
                        + "order by starts_at, id",
                Map.of("person", person.value(), "after", sql(endingAfter)));
    }

    /** Bookings of these operators in this lab that end after the instant; not more than a thousand people at a time. */
    List<BookingLife> ofOperators(Collection<PersonId> operators, Instant endingAfter) {
        return where(
                "operator_id in (:operators) and ends_at > :after and lab_id = :lab" + IN_ORDER,
                Map.of(
                        "operators",
                        operators.stream().map(PersonId::value).toList(),
                        "after",
                        sql(endingAfter),
                        "lab",
                        here()));
    }

    List<BookingLife> inRun(PersonId person) {
        return where(
                "operator_id = :person and state in ('RUNNING', 'STOPPED') union all "
                        + "select * from bookings where attendant_id = :person and state in ('RUNNING', 'STOPPED') "
                        + "order by starts_at, id",
                Map.of("person", person.value()));
    }

    List<BookingLife> pastOf(PersonId person, Instant endedBy, int atMost) {
        return where(
                "operator_id = :person and ends_at <= :ended union all "
                        + "select * from bookings where attendant_id = :person and ends_at <= :ended "
                        + "order by starts_at desc, id fetch first :most rows only",
                Map.of("person", person.value(), "ended", sql(endedBy), "most", atMost));
    }

    /** What the quotas may count: bookings of the operator in the lab that start at or after the instant, or are for the assignment. */
    List<BookingLife> ofOperator(PersonId operator, Instant startingFrom, @Nullable AssignmentId assignment) {
        Map<String, Object> values =
                new HashMap<>(Map.of("lab", here(), "operator", operator.value(), "from", sql(startingFrom)));
        if (assignment == null) {
            return where(FROM_ON + IN_ORDER, values);
        }
        values.put("assignment", assignment.value());
        values.put("farthest", farthest(startingFrom));
        return where(FROM_ON + " union all " + BEFORE_FOR_ASSIGNMENT + IN_ORDER, values);
    }

    /** Names the states that a started booking can be in, so that an index finds the few of them among years of others. */
    List<BookingLife> startedButNotClosedOut(CellId cell, BookingId otherThan) {
        return where("""
                state in ('BOOKED', 'CHECKED', 'READY', 'RELEASED', 'RUNNING', 'STOPPED', 'FINISHED') and cell_id = :cell
                and id <> :other and started_at is not null order by starts_at, id""", Map.of("cell", cell.value(), "other", otherThan.value()));
    }

    private List<BookingLife> where(String condition, Map<String, ?> values) {
        return jdbc.sql("select * from bookings where " + condition)
                .params(values)
                .query(BookingRows::life)
                .list();
    }

    private String skippingLocked() {
        return locks.forChange() + " skip locked";
    }

    private UUID here() {
        return labs.theLab().id().value();
    }

    private static Object sql(Instant instant) {
        return java.util.Objects.requireNonNull(SqlTime.toSql(instant));
    }

    private static @Nullable UUID value(@Nullable Id id) {
        return id == null ? null : id.value();
    }

    private static BookingLife life(ResultSet row, int number) throws SQLException {
        return new BookingLife(
                new BookingLife.Entry(
                        new BookingId(row.getObject("id", UUID.class)),
                        new CellId(row.getObject("cell_id", UUID.class)),
                        SqlTime.read(row, "starts_at"),
                        SqlTime.read(row, "ends_at"),
                        new PersonId(row.getObject("operator_id", UUID.class)),
                        nullable(row, "course_id", CourseId::new),
                        nullable(row, "assignment_id", AssignmentId::new),
                        row.getBoolean("outside_quota")),
                new BookingLife.Stored(
                        BookingState.valueOf(row.getString("state")),
                        nullable(row, "attendant_id", PersonId::new),
                        nullable(row, "revision_id", RevisionId::new),
                        SqlTime.readNullable(row, "checked_in_at"),
                        SqlTime.readNullable(row, "started_at"),
                        row.getInt("version")));
    }

    private static <T extends Id> @Nullable T nullable(ResultSet row, String column, Function<UUID, T> id)
            throws SQLException {
        UUID value = row.getObject(column, UUID.class);
        return value == null ? null : id.apply(value);
    }
}
