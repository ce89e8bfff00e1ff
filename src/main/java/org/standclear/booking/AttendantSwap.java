package org.standclear.booking;

import java.time.Instant;
import java.util.List;
import java.util.Optional;
import java.util.UUID;
import java.util.function.BiFunction;
import org.springframework.stereotype.Component;
import org.standclear.booking.BookingMoves.Told;
import org.standclear.booking.Bookings.Transition;
import org.standclear.booking.Claims.Claim;
import org.standclear.booking.Claims.Kind;
import org.standclear.cell.Cell;
import org.standclear.cell.Cells;
import org.standclear.people.People;
import org.standclear.platform.ids.BookingId;
import org.standclear.platform.ids.PersonId;

/** Puts another attendant, or none yet, at the e-stop of a booking. */
@Component
class AttendantSwap {

    private final BookingMoves moves;
    private final BookingRows rows;
    private final Claims claims;
    private final ClaimLocks locks;
    private final Parties.Lookup parties;
    private final Cells cells;
    private final People people;

    AttendantSwap(
            BookingMoves moves,
            BookingRows rows,
            Claims claims,
            ClaimLocks locks,
            Parties.Lookup parties,
            Cells cells,
            People people) {
        this.moves = moves;
        this.rows = rows;
        this.claims = claims;
        this.locks = locks;
        this.parties = parties;
        this.cells = cells;
        this.people = people;
    }

    Transition name(BookingId id, PersonId attendant, PersonId by) {
        return put(id, attendant, by, BookingLife::nameAttendant);
    }

    Transition handOver(BookingId id, PersonId attendant, PersonId by) {
        return put(id, attendant, by, BookingLife::handOver);
    }

    private Transition put(
            BookingId id, PersonId attendant, PersonId by, BiFunction<BookingLife, PersonId, Optional<String>> event) {
        BookingLife life = moves.lock(id);
        Booking before = life.booking();
        Cell cell = cells.find(before.cell()).orElseThrow();
        Instant from = latest(before.start(), moves.now());
        locks.lock(List.of(attendant.value()));
        Optional<String> refusal =
                AttendantRules.refusal(parties.of(attendant), cell, before.operator(), attendant, turn(before, from));
        if (refusal.isEmpty()) {
            refusal = busy(before, attendant, from);
        }
        if (refusal.isEmpty()) {
            refusal = event.apply(life, attendant);
        }
        if (refusal.isEmpty()) {
            claims.giveUpAttendantOf(id.value());
            if (from.isBefore(before.end())) {
                claims.add(Claim.ofBooking(id.value(), Kind.ATTENDANT, attendant.value(), from, before.end()));
            }
        }
        return moves.keep(
                life, refusal, new Told("attendant-named", by, people.printedName(attendant) + " attends the e-stop"));
    }

    Transition leaveOpen(BookingId id, PersonId by) {
        BookingLife life = moves.lock(id);
        Optional<String> refusal = life.askForAttendant();
        if (refusal.isEmpty()) {
            claims.giveUpAttendantOf(id.value());
        }
        return moves.keep(life, refusal, new Told("attendant-left", by, "an e-stop attendant is needed"));
    }

    /** Nobody stands at two e-stops, or runs one cell and attends another, at the same time. */
    private Optional<String> busy(Booking booking, PersonId attendant, Instant from) {
        boolean elsewhere = claims.on(List.of(attendant.value()), from, booking.end()).stream()
                .anyMatch(claim -> !id(booking).equals(claim.booking()) && !moves.settleIfMissed(claim.booking()));
        return elsewhere || runsOver(booking, attendant)
                ? Optional.of(AttendantRules.busy(people.printedName(attendant)))
                : Optional.empty();
    }

    /** A run that goes on after its slot claims nobody any more, and still has its people. */
    private boolean runsOver(Booking booking, PersonId attendant) {
        return !booking.start().isAfter(moves.now())
                && rows.inRun(attendant).stream()
                        .anyMatch(other -> !other.booking().id().equals(booking.id()));
    }

    private static UUID id(Booking booking) {
        return booking.id().value();
    }

    /** What is left of the slot; a run that goes on after it asks about now. */
    private static Slot turn(Booking booking, Instant from) {
        return new Slot(booking.cell(), from, latest(booking.end(), from.plusSeconds(1)));
    }

    private static Instant latest(Instant one, Instant other) {
        return one.isAfter(other) ? one : other;
    }
}
