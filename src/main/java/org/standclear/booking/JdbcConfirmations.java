package org.standclear.booking;

import java.time.Duration;
import java.time.Instant;
import java.util.Optional;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.stereotype.Service;
import org.springframework.transaction.annotation.Transactional;
import org.standclear.booking.BookingMoves.Told;
import org.standclear.platform.ids.BookingId;
import org.standclear.platform.ids.PersonId;
import org.standclear.platform.time.SqlTime;
import org.standclear.platform.web.NotFoundException;

/** Confirmations as a column of the bookings. */
@Service
@Transactional
class JdbcConfirmations implements Confirmations {

    private final BookingRows rows;
    private final BookingNumbers numbers;
    private final BookingMoves moves;
    private final BookingRecord record;
    private final WhoActs whoActs;
    private final JdbcClient jdbc;

    JdbcConfirmations(
            BookingRows rows,
            BookingNumbers numbers,
            BookingMoves moves,
            BookingRecord record,
            WhoActs whoActs,
            JdbcClient jdbc) {
        this.rows = rows;
        this.numbers = numbers;
        this.moves = moves;
        this.record = record;
        this.whoActs = whoActs;
        this.jdbc = jdbc;
    }

    @Override
    @Transactional(readOnly = true)
    public Optional<Instant> askedUntil(BookingId id) {
        int minutes = numbers.inForce().confirmMinutes();
        if (minutes == 0) {
            return Optional.empty();
        }
        return rows.find(id)
                .map(BookingLife::booking)
                .filter(booking -> booking.state() == BookingState.BOOKED
                        && booking.revision() == null
                        && booking.checkedInAt() == null)
                .map(booking -> booking.start().minus(Duration.ofMinutes(minutes)))
                .filter(until -> until.isAfter(moves.now()) && !rows.madeAt(id).isAfter(until))
                .filter(until -> confirmedAt(id).isEmpty());
    }

    @Override
    @Transactional(readOnly = true)
    public Optional<Instant> confirmedAt(BookingId booking) {
        return jdbc.sql("select confirmed_at from bookings where id = :id and confirmed_at is not null")
                .param("id", booking.value())
                .query((row, number) -> SqlTime.read(row, "confirmed_at"))
                .optional();
    }

    @Override
    public boolean confirm(BookingId id, PersonId by) {
        Booking found = rows.findHere(id).map(BookingLife::booking).orElseThrow(() -> new NotFoundException("booking"));
        whoActs.asOrFor(found.operator(), by, "booking");
        boolean said = jdbc.sql("""
                update bookings set confirmed_at = :at
                where id = :id and confirmed_at is null and state in ('BOOKED', 'CHECKED', 'READY')""")
                        .param("at", SqlTime.toSql(moves.now()))
                        .param("id", id.value())
                        .update()
                == 1;
        if (said) {
            Booking booking = rows.find(id).orElseThrow().booking();
            record.tell(booking, new Told("confirmed", by, "the operator comes"));
        }
        return said;
    }
}
