package org.standclear.booking;

import java.util.Collection;
import java.util.List;
import org.springframework.stereotype.Component;
import org.standclear.people.StandingBookings;
import org.standclear.platform.ids.PersonId;

/** Counts what people have ahead, for who is about to take them out of a section, and tells them that it stays. */
@Component
class BookingsAhead implements StandingBookings {

    private final Bookings bookings;
    private final BookingMoves moves;
    private final BookingLetters letters;

    BookingsAhead(Bookings bookings, BookingMoves moves, BookingLetters letters) {
        this.bookings = bookings;
        this.moves = moves;
        this.letters = letters;
    }

    @Override
    public int aheadOf(Collection<PersonId> people) {
        return people.stream().mapToInt(person -> ahead(person).size()).sum();
    }

    private List<Booking> ahead(PersonId person) {
        return bookings.of(person, moves.now()).stream()
                .filter(booking -> booking.operator().equals(person))
                .toList();
    }

    @Override
    public void tellOfLeaving(PersonId person, String section) {
        List<Booking> ahead = ahead(person);
        if (!ahead.isEmpty()) {
            letters.leftSection(person, section, ahead);
        }
    }

    @Override
    public void tellOfReturn(PersonId person, String section) {
        if (!ahead(person).isEmpty()) {
            letters.backInSection(person, section);
        }
    }
}
