package org.standclear.booking;

import java.time.Instant;
import java.util.Optional;
import java.util.stream.Stream;
import org.springframework.stereotype.Component;
import org.standclear.booking.BookingMoves.Told;
import org.standclear.booking.BookingRequest.Refusal;
import org.standclear.booking.Bookings.Transition;
import org.standclear.booking.BulkMoves.Moved;
import org.standclear.booking.WaitingList.Waiting;
import org.standclear.cell.Cell;
import org.standclear.cell.Cells;
import org.standclear.platform.ids.BookingId;
import org.standclear.platform.ids.PersonId;
import org.standclear.platform.time.LabTime;

/** Puts a booking back where it stood before it was moved in bulk; the history keeps both moves. */
@Component
class MoveBack {

    private static final String WHY = "the move was undone";

    private final BookingRows rows;
    private final BookingMoves moves;
    private final TakenRule takenRule;
    private final PeopleRule peopleRule;
    private final NewBookings newBookings;
    private final MakeUps makeUps;
    private final WaitRows waits;
    private final OfferRows offers;
    private final ClaimLocks locks;
    private final Parties.Lookup parties;
    private final Cells cells;
    private final BookingLetters letters;
    private final LabTime labTime;

    MoveBack(
            BookingRows rows,
            BookingMoves moves,
            TakenRule takenRule,
            PeopleRule peopleRule,
            NewBookings newBookings,
            MakeUps makeUps,
            WaitRows waits,
            OfferRows offers,
            ClaimLocks locks,
            Parties.Lookup parties,
            Cells cells,
            BookingLetters letters,
            LabTime labTime) {
        this.rows = rows;
        this.moves = moves;
        this.takenRule = takenRule;
        this.peopleRule = peopleRule;
        this.newBookings = newBookings;
        this.makeUps = makeUps;
        this.waits = waits;
        this.offers = offers;
        this.locks = locks;
        this.parties = parties;
        this.cells = cells;
        this.letters = letters;
        this.labTime = labTime;
    }

    /**
     * Why it cannot go back; empty when it did, or when its old time is past and it stays where it is.
     *
     * @param movedAt the instant of the move, and of the waits that began with it
     */
    Optional<String> back(Moved one, Instant movedAt, PersonId by) {
        BookingLife was = rows.find(one.was()).orElseThrow();
        Booking before = was.booking();
        if (!before.start().isAfter(moves.now())) {
            return Optional.empty();
        }
        BookingId now = one.now();
        if (now != null) {
            BookingLife life = moves.lock(now);
            Booking moved = life.booking();
            if (moved.state() == BookingState.CANCELLED || moved.state() == BookingState.LATE_CANCELLED) {
                return Optional.empty();
            }
            if (moves.keep(life, life.giveUp(BookingEvent.MOVE), new Told("moved-by-staff", by, WHY))
                    instanceof Transition.Refused refused) {
                return Optional.of(labTime.datedSpan(moved.start(), moved.end()) + ": " + refused.says());
            }
        } else {
            makeUps.takeBackFor(before.id());
            waitsOf(before.operator(), movedAt).findFirst().ifPresent(this::waitsNoMore);
        }
        return restored(was, now, by);
    }

    /**
     * Whether somebody for whom no slot was free has got another one since, from the first place on the list or with the
     * make-up: with the old one back they would have two for one.
     */
    boolean gotAnother(Moved one, Instant movedAt) {
        if (one.now() != null) {
            return false;
        }
        Booking before = rows.find(one.was()).orElseThrow().booking();
        // who is taking the offer this very moment is waited for
        waitsOf(before.operator(), movedAt).forEach(wait -> offers.lockOpenOf(wait.id()));
        return waits.ledToBooking(before.operator(), movedAt) || makeUps.usedFor(before.id());
    }

    private Stream<Waiting> waitsOf(PersonId person, Instant movedAt) {
        return waits.liveOf(person).stream()
                .filter(wait -> wait.goesFirst() && wait.joinedAt().equals(movedAt));
    }

    private void waitsNoMore(Waiting wait) {
        offers.openOf(wait.id()).ifPresent(offer -> offers.decide(offer.id(), OfferState.DECLINED, moves.now()));
        waits.end(wait.id(), WaitRows.End.LEFT, moves.now());
    }

    private Optional<String> restored(BookingLife was, @org.jspecify.annotations.Nullable BookingId now, PersonId by) {
        Booking before = was.booking();
        MakeBooking wanted = new MakeBooking(
                before.cell(),
                before.start(),
                before.operator(),
                before.attendant(),
                before.course(),
                before.assignment(),
                by);
        Cell cell = cells.lock(before.cell());
        BookingRequest request = new BookingRequest(
                wanted,
                new Slot(before.cell(), before.start(), before.end()),
                cell,
                parties.of(before.operator(), by, before.attendant()),
                moves.settings(),
                moves.now());
        locks.lock(TakenRule.subjects(wanted));
        Optional<Refusal> refusal = SlotRule.inService(cell)
                .or(() -> peopleRule.refusalOfMove(request))
                .or(() -> takenRule.underLock(request));
        if (refusal.isPresent()) {
            return refusal.map(Refusal::says);
        }
        Booking back = newBookings.made(
                request,
                was.entry().outsideQuota(),
                before.revision(),
                new Told("moved-here", by, "back here: " + WHY));
        newBookings.standsFor(now == null ? before.id() : now, back.id());
        letters.movedBack(back);
        return Optional.empty();
    }
}
