package org.standclear.run.records;

import java.sql.ResultSet;
import java.sql.SQLException;
import java.time.Duration;
import java.time.Instant;
import java.util.List;
import java.util.Optional;
import java.util.UUID;
import org.jspecify.annotations.Nullable;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.stereotype.Repository;
import org.standclear.booking.Booking;
import org.standclear.booking.Turns;
import org.standclear.people.People;
import org.standclear.platform.ids.BookingId;
import org.standclear.platform.ids.Id;
import org.standclear.platform.ids.PersonId;
import org.standclear.platform.lab.Labs;
import org.standclear.platform.time.SqlTime;
import org.standclear.run.Credits;
import org.standclear.run.Run;
import org.standclear.run.RunEvent;
import org.standclear.run.RunEvent.Kind;

/** Credits the operator with the minutes of the slot that a precautionary stop took. */
@Repository
class CreditRows implements Credits {

    private final JdbcClient jdbc;
    private final EventWriter events;
    private final People people;
    private final Turns turns;
    private final Labs labs;

    CreditRows(JdbcClient jdbc, EventWriter events, People people, Turns turns, Labs labs) {
        this.jdbc = jdbc;
        this.events = events;
        this.people = people;
        this.turns = turns;
        this.labs = labs;
    }

    /** From the stop, or from where the minutes are credited already, to its reset or to the run's end, within the slot. */
    static int minutes(Booking booking, List<Credit> before, Instant stoppedAt, Instant until) {
        Instant from = before.stream()
                .map(Credit::until)
                .reduce(stoppedAt.isBefore(booking.start()) ? booking.start() : stoppedAt, CreditRows::later);
        Instant to = until.isAfter(booking.end()) ? booking.end() : until;
        int left = slot(booking) - before.stream().mapToInt(Credit::minutes).sum();
        return Math.min(left, begun(from, to));
    }

    private static int slot(Booking booking) {
        return begun(booking.start(), booking.end());
    }

    /** A minute that was begun counts. */
    private static int begun(Instant from, Instant to) {
        return (int) ((Math.max(0, Duration.between(from, to).toSeconds()) + 59) / 60);
    }

    private static Instant later(Instant one, Instant other) {
        return one.isAfter(other) ? one : other;
    }

    /** The booking is locked. */
    void credit(Booking booking, @Nullable Run run, Instant stoppedAt, Instant until, PersonId by, Instant now) {
        int minutes = minutes(booking, of(booking.id()), stoppedAt, until);
        if (minutes <= 0) {
            return;
        }
        PersonId person = booking.operator();
        boolean enough = 2 * (open(person) + minutes) >= slot(booking);
        boolean made = enough && turns.giveMakeUpFor(booking.id(), person, by);
        String words = minutes + " min credited to " + people.printedName(person) + " after a precautionary stop"
                + (made ? "; that makes one booking beyond the quotas." : ", to be made up.");
        RunEvent event = events.add(booking, run, Kind.CREDIT, null, String.valueOf(minutes), words, by, now);
        jdbc.sql("""
                insert into run_credits (id, booking_id, person_id, minutes, stopped_at, until_at, event_id)
                values (:id, :booking, :person, :minutes, :stopped, :until, :event)""")
                .param("id", Id.newValue())
                .param("booking", booking.id().value())
                .param("person", person.value())
                .param("minutes", minutes)
                .param("stopped", SqlTime.toSql(stoppedAt))
                .param("until", SqlTime.toSql(until))
                .param("event", event.id())
                .update();
        if (made) {
            jdbc.sql("update run_credits set spent_for = :booking where person_id = :person and spent_for is null")
                    .param("booking", booking.id().value())
                    .param("person", person.value())
                    .update();
        }
    }

    @Override
    public int open(PersonId person) {
        return jdbc.sql("""
                select coalesce(sum(minutes), 0) from run_credits where person_id = :person and spent_for is null""")
                .param("person", person.value())
                .query(Integer.class)
                .single();
    }

    /** Whose lab it is, is asked of the latest one by one; with a bound that bounds nothing H2 follows the index in its order. */
    @Override
    public List<Credit> latest(int atMost) {
        return jdbc.sql("""
                select c.* from run_credits c
                where (select b.lab_id from bookings b where b.id = c.booking_id) = :lab
                    and c.until_at < timestamp with time zone '9999-01-01 00:00:00+00'
                order by c.until_at desc, c.id desc fetch first :count rows only""")
                .param("lab", labs.theLab().id().value())
                .param("count", atMost)
                .query(CreditRows::credit)
                .list();
    }

    /** When the booking was stopped last; empty when it was not. */
    Optional<Instant> lastStop(BookingId booking) {
        return events.lastStop(booking);
    }

    @Override
    public List<Credit> of(PersonId person, Instant since) {
        return jdbc.sql(
                        "select * from run_credits where person_id = :person and until_at > :since order by until_at desc, id")
                .param("person", person.value())
                .param("since", SqlTime.toSql(since))
                .query(CreditRows::credit)
                .list();
    }

    @Override
    public List<Credit> of(BookingId booking) {
        return jdbc.sql("select * from run_credits where booking_id = :booking order by until_at, id")
                .param("booking", booking.value())
                .query(CreditRows::credit)
                .list();
    }

    private static Credit credit(ResultSet row, int number) throws SQLException {
        UUID spentFor = row.getObject("spent_for", UUID.class);
        return new Credit(
                new BookingId(row.getObject("booking_id", UUID.class)),
                new PersonId(row.getObject("person_id", UUID.class)),
                row.getInt("minutes"),
                SqlTime.read(row, "stopped_at"),
                SqlTime.read(row, "until_at"),
                spentFor == null ? null : new BookingId(spentFor));
    }
}
