package org.standclear.booking;

import java.time.Duration;
import java.time.Instant;
import java.time.LocalTime;
import java.time.temporal.ChronoUnit;
import java.util.List;
import java.util.Optional;
import java.util.function.Supplier;
import java.util.stream.Stream;
import org.slf4j.Logger;
import org.slf4j.LoggerFactory;
import org.springframework.dao.DataAccessException;
import org.springframework.stereotype.Component;
import org.springframework.transaction.PlatformTransactionManager;
import org.springframework.transaction.support.TransactionTemplate;
import org.standclear.booking.BookingDesk.Outcome;
import org.standclear.booking.BookingRequest.Refusal;
import org.standclear.booking.WaitingList.Offer;
import org.standclear.booking.WaitingList.Waiting;
import org.standclear.cell.Cell;
import org.standclear.cell.Cells;
import org.standclear.platform.ids.Id;
import org.standclear.platform.ids.PersonId;
import org.standclear.platform.lab.Labs;
import org.standclear.platform.time.LabTime;
import org.standclear.platform.time.SqlTime;

/** Makes offers to people who wait, one transaction each, and books what is taken. */
@Component
class OfferMaker {

    /** Nobody is asked at night: an offer would run out unseen. */
    static final LocalTime DAY_BEGINS = LocalTime.of(7, 0);

    static final LocalTime DAY_ENDS = LocalTime.of(21, 0);

    /** The rest of a missed slot: so long to answer and come, and so much left to be worth it (common practice). */
    private static final Duration SHORT_NOTICE = Duration.ofMinutes(4);

    private static final Duration WORTH_IT = Duration.ofMinutes(15);
    private static final int LOOKED_AT = 12;
    private static final Logger LOG = LoggerFactory.getLogger(OfferMaker.class);

    private final WaitRows waits;
    private final OfferRows offers;
    private final FreeSlots freeSlots;
    private final BookingRows bookings;
    private final BookingMoves moves;
    private final PeopleRule peopleRule;
    private final SharedOutRule sharedOutRule;
    private final TakenRule takenRule;
    private final NewBookings newBookings;
    private final ClaimLocks locks;
    private final Parties.Lookup parties;
    private final Cells cells;
    private final BookingLetters letters;
    private final Labs labs;
    private final LabTime labTime;
    private final TransactionTemplate transaction;

    OfferMaker(
            WaitRows waits,
            OfferRows offers,
            FreeSlots freeSlots,
            BookingRows bookings,
            BookingMoves moves,
            PeopleRule peopleRule,
            SharedOutRule sharedOutRule,
            TakenRule takenRule,
            NewBookings newBookings,
            ClaimLocks locks,
            Parties.Lookup parties,
            Cells cells,
            BookingLetters letters,
            Labs labs,
            LabTime labTime,
            PlatformTransactionManager transactions) {
        this.waits = waits;
        this.offers = offers;
        this.freeSlots = freeSlots;
        this.bookings = bookings;
        this.moves = moves;
        this.peopleRule = peopleRule;
        this.sharedOutRule = sharedOutRule;
        this.takenRule = takenRule;
        this.newBookings = newBookings;
        this.locks = locks;
        this.parties = parties;
        this.cells = cells;
        this.letters = letters;
        this.labs = labs;
        this.labTime = labTime;
        this.transaction = new TransactionTemplate(transactions);
    }

    int round(Supplier<List<Waiting>> inOrder) {
        transaction.executeWithoutResult(status -> settle());
        List<Waiting> waiting = inOrder.get();
        LocalTime time = LocalTime.ofInstant(moves.now(), labTime.zone());
        if (waiting.isEmpty() || time.isBefore(DAY_BEGINS) || !time.isBefore(DAY_ENDS)) {
            return 0;
        }
        return (int) waiting.stream().filter(this::offered).count();
    }

    /** Offers that ran out go to the next, and nobody waits for what is past. */
    private void settle() {
        Instant now = moves.now();
        for (Offer offer : offers.lockExpired(now)) {
            offers.decide(offer.id(), OfferState.EXPIRED, now);
            waits.pass(offer.waitId(), now);
        }
        waits.endPast(now);
    }

    private boolean offered(Waiting one) {
        try {
            return Boolean.TRUE.equals(transaction.execute(status -> offer(one.id())));
        } catch (DataAccessException gaveUp) {
            if (!Contention.is(gaveUp)) {
                throw gaveUp;
            }
            LOG.info("somebody was faster than the offer to wait {}", one.id());
            return false;
        }
    }

    private boolean offer(java.util.UUID wait) {
        Optional<Waiting> live = waits.lockLive(wait);
        if (live.isEmpty() || offers.openOf(wait).isPresent()) {
            return false;
        }
        Waiting one = live.get();
        return candidates(one).anyMatch(slot -> offer(one, slot));
    }

    /** What is left of slots that were missed, then whole slots, soonest first. */
    private Stream<Slot> candidates(Waiting one) {
        Instant now = moves.now();
        Instant from = one.from().isAfter(now) ? one.from() : now;
        Stream<Slot> whole = freeSlots.next(one.person(), from, LOOKED_AT, one.cell()).stream()
                .filter(slot -> slot.start().isAfter(now.plus(SHORT_NOTICE)))
                .filter(slot ->
                        !slot.start().isBefore(one.from()) && !slot.end().isAfter(one.until()));
        return Stream.concat(restOfMissed(one, now), whole);
    }

    private Stream<Slot> restOfMissed(Waiting one, Instant now) {
        Instant start = now.truncatedTo(ChronoUnit.MINUTES).plus(SHORT_NOTICE);
        return bookings.ofLab(labs.theLab().id(), now, now.plusSeconds(1)).stream()
                .map(life -> life.bookingAsOf(now, moves.settings()))
                .filter(booking -> booking.state() == BookingState.MISSED)
                .filter(booking -> one.cell() == null || one.cell().equals(booking.cell()))
                .filter(booking -> !start.plus(WORTH_IT).isAfter(booking.end()))
                .filter(booking -> !start.isBefore(one.from()) && !booking.end().isAfter(one.until()))
                .map(booking -> new Slot(booking.cell(), start, booking.end()));
    }

    private boolean offer(Waiting one, Slot slot) {
        Instant now = moves.now();
        BookingRequest request = request(one, slot, one.person(), now);
        boolean against = peopleRule.refusal(request).isPresent()
                || sharedOutRule.refusal(request).isPresent()
                || underLock(request, () -> takenRule.underLock(request)).isPresent()
                || newBookings.overQuota(request).isPresent();
        if (against) {
            return false;
        }
        Instant until = now.plus(Duration.ofMinutes(moves.settings().offerMinutes()));
        Offer offer = new Offer(
                Id.newValue(),
                one.id(),
                one.person(),
                slot,
                SqlTime.stored(until.isAfter(slot.start()) ? slot.start() : until),
                OfferState.OPEN);
        offers.insert(offer, now);
        letters.offered(offer);
        return true;
    }

    /**
     * Every rule once more, but for the grid: the rest of a missed slot does not begin on it. Who is refused keeps the offer
     * until its time is over, and may cancel another booking for it.
     */
    Outcome book(Offer offer, Waiting waiting, PersonId by) {
        BookingRequest request = request(waiting, offer.slot(), by, moves.now());
        Optional<Refusal> refusal = peopleRule
                .refusal(request)
                .or(() -> underLock(request, () -> takenRule.underLockForOffer(request, offer.id())))
                .or(() -> newBookings.overQuota(request));
        if (refusal.isPresent()) {
            return new Outcome.Refused(refusal.get().rule(), refusal.get().says(), List.of());
        }
        offers.decide(offer.id(), OfferState.TAKEN, moves.now());
        Booking booking =
                newBookings.withinQuota(request, "booked from the waiting list").booking();
        if (booking == null) {
            throw new IllegalStateException("the quota changed under the locks of cell and person");
        }
        return new Outcome.Booked(booking);
    }

    private Optional<Refusal> underLock(BookingRequest request, Supplier<Optional<Refusal>> taken) {
        Cell cell = cells.lock(request.cell().id());
        locks.lock(TakenRule.subjects(request.wanted()));
        return SlotRule.inService(cell).or(taken);
    }

    private BookingRequest request(Waiting one, Slot slot, PersonId by, Instant now) {
        MakeBooking wanted =
                new MakeBooking(slot.cell(), slot.start(), one.person(), null, one.course(), one.assignment(), by);
        return new BookingRequest(
                wanted,
                slot,
                cells.find(slot.cell()).orElseThrow(),
                parties.of(one.person(), by),
                moves.settings(),
                now);
    }
}
