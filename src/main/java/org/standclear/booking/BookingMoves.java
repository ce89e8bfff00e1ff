package org.standclear.booking;

import java.time.Clock;
import java.time.Instant;
import java.util.Optional;
import java.util.UUID;
import java.util.function.Function;
import org.jspecify.annotations.Nullable;
import org.springframework.stereotype.Component;
import org.standclear.booking.Bookings.Transition;
import org.standclear.platform.ids.BookingId;
import org.standclear.platform.ids.PersonId;
import org.standclear.platform.time.SqlTime;
import org.standclear.platform.web.NotFoundException;

/** Takes one event of a booking's life from the lock to the record. */
@Component
class BookingMoves {

    private final BookingRows rows;
    private final Claims claims;
    private final BookingRecord record;
    private final BookingNumbers numbers;
    private final Clock clock;

    BookingMoves(BookingRows rows, Claims claims, BookingRecord record, BookingNumbers numbers, Clock clock) {
        this.rows = rows;
        this.claims = claims;
        this.record = record;
        this.numbers = numbers;
        this.clock = clock;
    }

    /** What is told about a move: kind, who, one sentence. */
    record Told(String kind, @Nullable PersonId by, String words) {}

    Instant now() {
        return SqlTime.stored(clock.instant());
    }

    BookingSettings settings() {
        return numbers.inForce();
    }

    /** The locked booking; if it is missed by now, that is written down first. */
    BookingLife lock(BookingId id) {
        BookingLife life = rows.lock(id).orElseThrow(() -> new NotFoundException("booking"));
        settle(life);
        return life;
    }

    /** Writes a missed booking down; says whether it was one. The row is locked. */
    boolean settle(BookingLife life) {
        if (!life.isDueMissed(now(), settings())) {
            return false;
        }
        keep(
                life,
                life.take(BookingEvent.MISS),
                new Told("missed", null, "Nobody checked in within the grace time; the slot is free again"));
        return true;
    }

    /**
     * Whether there is such a booking in this lab and it is missed by now. One of another lab, which the same person has,
     * is missed by that lab's grace time alone, and only that lab's rounds say so.
     */
    boolean isDueMissed(@Nullable UUID booking) {
        if (booking == null) {
            return false;
        }
        Instant now = now();
        BookingSettings settings = settings();
        return rows.findHere(new BookingId(booking))
                .filter(life -> life.isDueMissed(now, settings))
                .isPresent();
    }

    /**
     * Frees what a booking of this lab holds if it is missed by now; says whether it did. A booking that somebody else has
     * locked is left alone: waiting for it while holding the locks of claims could wait for ever.
     */
    boolean settleIfMissed(@Nullable UUID booking) {
        return booking != null
                && isDueMissed(booking)
                && rows.lockHereUnlessLocked(new BookingId(booking))
                        .filter(this::settle)
                        .isPresent();
    }

    Transition move(BookingId id, Told told, Function<BookingLife, Optional<String>> event) {
        BookingLife life = lock(id);
        return keep(life, event.apply(life), told);
    }

    /** Stores what the event changed, frees what is no longer held, and tells it; or hands the refusal on. */
    Transition keep(BookingLife life, Optional<String> refusal, Told told) {
        if (refusal.isPresent()) {
            return new Transition.Refused(life.booking().state(), refusal.get());
        }
        rows.update(life, now());
        Booking booking = life.booking();
        if (!booking.state().holdsItsSlot()) {
            claims.giveUpAllOf(booking.id().value());
        }
        record.tell(booking, told);
        return new Transition.Moved(booking);
    }
}
