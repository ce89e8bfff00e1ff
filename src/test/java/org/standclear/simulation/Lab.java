package org.standclear.simulation;

import java.time.LocalDate;
import java.time.ZoneOffset;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import org.standclear.booking.Booking;
import org.standclear.platform.ids.BookingId;
import org.standclear.platform.ids.CellId;
import org.standclear.platform.ids.RevisionId;
import org.standclear.program.Revision;
import org.standclear.signoff.SignoffDesk.SignPart;
import org.standclear.testing.MovableClock;

/** What the acts in one lab share: doors, people, clock, chance, and what people remember. */
final class Lab {

    final Doors doors;
    final Cast cast;
    final MovableClock clock;
    final Chance chance;

    /** Bookings made this term, in the order in which they were made. */
    final List<BookingId> made = new ArrayList<>();

    /** What each uploaded revision declares as its override, and its author's latest. */
    final Map<RevisionId, String> overrides = new HashMap<>();

    final Map<BookingId, Revision> latest = new HashMap<>();

    /** Forms that were filled in and not sent yet; some are sent when the world has moved on. */
    final List<SignPart> unsent = new ArrayList<>();

    Lab(Doors doors, Cast cast, MovableClock clock, Chance chance) {
        this.doors = doors;
        this.cast = cast;
        this.clock = clock;
        this.chance = chance;
    }

    /** The lab of the tests is in UTC. */
    LocalDate today() {
        return LocalDate.ofInstant(clock.instant(), ZoneOffset.UTC);
    }

    /** Those of today that hold their slot, or held it to the end. */
    List<Booking> bookingsOn(CellId cell) {
        return doors.bookings().onDay(cell, today());
    }

    Booking booking(BookingId id) {
        return doors.bookings().find(id).orElseThrow();
    }

    /** The outcome of a service in a word, without ids, so that two plays of a seed can be compared. */
    static String word(Object outcome) {
        return outcome.getClass().getSimpleName();
    }
}
