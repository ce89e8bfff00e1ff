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
import org.standclear.people.People;
import org.standclear.platform.ids.BookingId;
import org.standclear.platform.ids.Id;
import org.standclear.platform.ids.PersonId;
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

    CreditRows(JdbcClient jdbc, EventWriter events, People people) {
        this.jdbc = jdbc;
        this.events = events;
        this.people = people;
    }

    /** The part of the span that lies in the slot; a minute that was begun counts. */
    static int minutes(Booking booking, Instant stoppedAt, Instant until) {
        Instant from = stoppedAt.isBefore(booking.start()) ? booking.start() : stoppedAt;
        Instant to = until.isAfter(booking.end()) ? booking.end() : until;
        long seconds = Math.max(0, Duration.between(from, to).toSeconds());
        return (int) ((seconds + 59) / 60);
    }

    void credit(Booking booking, @Nullable Run run, Instant stoppedAt, Instant until, PersonId by, Instant now) {
        int minutes = minutes(booking, stoppedAt, until);
        if (minutes == 0) {
            return;
        }
        String words = minutes + " min credited to " + people.printedName(booking.operator())
                + " after a precautionary stop, to be made up.";
        RunEvent event = events.add(booking, run, Kind.CREDIT, null, String.valueOf(minutes), words, by, now);
        jdbc.sql("""
                insert into run_credits (id, booking_id, person_id, minutes, stopped_at, until_at, event_id)
                values (:id, :booking, :person, :minutes, :stopped, :until, :event)""")
                .param("id", Id.newValue())
                .param("booking", booking.id().value())
                .param("person", booking.operator().value())
                .param("minutes", minutes)
                .param("stopped", SqlTime.toSql(stoppedAt))
                .param("until", SqlTime.toSql(until))
                .param("event", event.id())
                .update();
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
        return new Credit(
                new BookingId(row.getObject("booking_id", UUID.class)),
                new PersonId(row.getObject("person_id", UUID.class)),
                row.getInt("minutes"),
                SqlTime.read(row, "stopped_at"),
                SqlTime.read(row, "until_at"));
    }
}
