package org.standclear.signoff.records;

import java.time.Clock;
import java.time.Instant;
import org.springframework.stereotype.Component;
import org.springframework.transaction.annotation.Transactional;
import org.standclear.booking.Booking;
import org.standclear.booking.BookingState;
import org.standclear.booking.Bookings;
import org.standclear.platform.ids.BookingId;
import org.standclear.platform.lab.Labs;
import org.standclear.platform.time.SqlTime;
import org.standclear.signoff.Release;
import org.standclear.signoff.Turn;
import org.standclear.trail.RecordedEntry;
import org.standclear.trail.TrailReader;

/**
 * Writes down once that a turn at the e-stop passed its end while the run goes on. Nothing here stops an arm: the people
 * at the cell and at the desk are told, and swap.
 */
@Component
class TurnsOver {

    private final Bookings bookings;
    private final ReleaseRows releases;
    private final Turns turns;
    private final TrailReader record;
    private final SignoffTrail trail;
    private final Labs labs;
    private final Clock clock;

    TurnsOver(
            Bookings bookings,
            ReleaseRows releases,
            Turns turns,
            TrailReader record,
            SignoffTrail trail,
            Labs labs,
            Clock clock) {
        this.bookings = bookings;
        this.releases = releases;
        this.turns = turns;
        this.record = record;
        this.trail = trail;
        this.labs = labs;
        this.clock = clock;
    }

    /** Looks at the turn of whoever is at the booking's e-stop. */
    @Transactional
    public void look(BookingId id) {
        Instant now = SqlTime.stored(clock.instant());
        Release going = releases.latest(id).orElseThrow();
        if (!turns.of(going.attendant(), now).over() || isWritten(id)) {
            return;
        }
        // asked again under the lock: a handover, or another instance, may have come in between
        Booking booking = bookings.lock(id);
        Release release = releases.latest(id).orElseThrow();
        Turn turn = turns.of(release.attendant(), now);
        if (booking.state() == BookingState.RUNNING && turn.over() && !isWritten(id)) {
            trail.turnOver(booking, release, turn);
        }
    }

    /** Whether the record says so since somebody last came to this e-stop. */
    private boolean isWritten(BookingId id) {
        boolean written = false;
        for (RecordedEntry entry : record.about(labs.theLab().id(), id.toString())) {
            written = switch (entry.kind()) {
                case SignoffTrail.TURN_OVER -> true;
                case "signoff.released", "signoff.handed-over" -> false;
                default -> written;
            };
        }
        return written;
    }
}
