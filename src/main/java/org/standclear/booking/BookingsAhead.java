package org.standclear.booking;

import java.util.Collection;
import org.springframework.stereotype.Component;
import org.standclear.people.StandingBookings;
import org.standclear.platform.ids.PersonId;

/** Counts what people have ahead, for who is about to take them out of a section. */
@Component
class BookingsAhead implements StandingBookings {

    private final Bookings bookings;
    private final BookingMoves moves;

    BookingsAhead(Bookings bookings, BookingMoves moves) {
        this.bookings = bookings;
        this.moves = moves;
    }

    @Override
    public int aheadOf(Collection<PersonId> people) {
        return people.stream()
                .mapToInt(person -> (int) bookings.of(person, moves.now()).stream()
                        .filter(booking -> booking.operator().equals(person))
                        .count())
                .sum();
    }
}
