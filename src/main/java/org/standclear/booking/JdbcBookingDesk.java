package org.standclear.booking;

import java.time.Duration;
import java.time.Instant;
import java.util.List;
import java.util.Optional;
import java.util.UUID;
import org.jspecify.annotations.Nullable;
import org.springframework.stereotype.Service;
import org.springframework.transaction.annotation.Transactional;
import org.standclear.booking.BookingMoves.Told;
import org.standclear.booking.BookingRequest.Refusal;
import org.standclear.cell.Cell;
import org.standclear.cell.Cells;
import org.standclear.platform.ids.BookingId;
import org.standclear.platform.ids.PersonId;
import org.standclear.platform.web.NotFoundException;

/**
 * Asks every rule, the cheap ones before anything is locked, the ones that count others' bookings after. Locks are taken
 * in one order everywhere: the cell's row, then the subjects of the claims.
 */
@Service
@Transactional
class JdbcBookingDesk implements BookingDesk {

    private static final int NEXT_FREE = 6;

    private final BookingRows rows;
    private final BookingMoves moves;
    private final ClaimLocks locks;
    private final SlotRule slotRule;
    private final PeopleRule peopleRule;
    private final SharedOutRule sharedOutRule;
    private final Quota quota;
    private final TakenRule takenRule;
    private final NewBookings newBookings;
    private final PersonsLength lengths;
    private final BookingLetters letters;
    private final FreeSlots freeSlots;
    private final CellClosures closures;
    private final Cells cells;
    private final WhoActs whoActs;
    private final Parties.Lookup parties;

    JdbcBookingDesk(
            BookingRows rows,
            BookingMoves moves,
            ClaimLocks locks,
            SlotRule slotRule,
            PeopleRule peopleRule,
            SharedOutRule sharedOutRule,
            Quota quota,
            TakenRule takenRule,
            NewBookings newBookings,
            PersonsLength lengths,
            BookingLetters letters,
            FreeSlots freeSlots,
            CellClosures closures,
            Cells cells,
            WhoActs whoActs,
            Parties.Lookup parties) {
        this.rows = rows;
        this.moves = moves;
        this.locks = locks;
        this.slotRule = slotRule;
        this.peopleRule = peopleRule;
        this.sharedOutRule = sharedOutRule;
        this.quota = quota;
        this.takenRule = takenRule;
        this.newBookings = newBookings;
        this.lengths = lengths;
        this.letters = letters;
        this.freeSlots = freeSlots;
        this.closures = closures;
        this.cells = cells;
        this.whoActs = whoActs;
        this.parties = parties;
    }

    @Override
    public Outcome book(MakeBooking wanted) {
        Request asked = asked(wanted);
        if (asked.request() == null) {
            return refused(wanted, asked.refusal().orElseThrow());
        }
        BookingRequest request = asked.request();
        Optional<Refusal> refusal = beforeLocks(request).or(() -> underLocks(request));
        if (refusal.isPresent()) {
            return refused(wanted, refusal.get());
        }
        NewBookings.Made made = newBookings.withinQuota(request, "booked");
        Booking booking = made.booking();
        return booking == null ? refused(wanted, made.refusal().orElseThrow()) : new Outcome.Booked(booking);
    }

    @Override
    @Transactional(readOnly = true)
    public Optional<Outcome.Refused> objection(MakeBooking wanted) {
        Request asked = asked(wanted);
        BookingRequest request = asked.request();
        Optional<Refusal> refusal = request == null
                ? asked.refusal()
                : peopleRule
                        .refusal(request)
                        .or(() -> sharedOutRule.refusal(request))
                        .or(() -> takenRule.atFirstSight(request))
                        .or(() -> newBookings.overQuota(request));
        return refusal.map(found -> refused(wanted, found));
    }

    @Override
    @Transactional(readOnly = true)
    public QuotaUse quotaOf(PersonId operator) {
        return quota.use(operator, moves.now(), moves.settings());
    }

    /** Either what the rules can look at, or why there is no such slot to ask for. */
    private record Request(@Nullable BookingRequest request, Optional<Refusal> refusal) {}

    private Request asked(MakeBooking wanted) {
        Cell cell = whoActs.cellOfThisLab(wanted.cell());
        BookingSettings settings = moves.settings();
        Instant now = moves.now();
        Duration taking = lengths.of(wanted.operator(), peopleRule.courseOf(wanted), settings);
        Optional<Refusal> noSlot =
                SlotRule.inService(cell).or(() -> slotRule.refusal(cell, wanted.start(), taking, settings, now));
        if (noSlot.isPresent()) {
            return new Request(null, noSlot);
        }
        Slot slot = new Slot(cell.id(), wanted.start(), wanted.start().plus(taking));
        Parties of = parties.of(wanted.operator(), wanted.by(), wanted.attendant());
        if (of.person(wanted.operator()).isEmpty() || of.person(wanted.by()).isEmpty()) {
            throw new NotFoundException("person");
        }
        return new Request(new BookingRequest(wanted, slot, cell, of, settings, now), Optional.empty());
    }

    private Optional<Refusal> beforeLocks(BookingRequest request) {
        return peopleRule
                .refusal(request)
                .or(() -> sharedOutRule.refusal(request))
                .or(() -> takenRule.cellAtFirstSight(request));
    }

    private Optional<Refusal> underLocks(BookingRequest request) {
        Cell cell = cells.lock(request.cell().id());
        locks.lock(TakenRule.subjects(request.wanted()));
        return SlotRule.inService(cell).or(() -> takenRule.underLock(request));
    }

    private Outcome.Refused refused(MakeBooking wanted, Refusal refusal) {
        return new Outcome.Refused(
                refusal.rule(), refusal.says(), freeSlots.next(wanted.operator(), wanted.start(), NEXT_FREE));
    }

    @Override
    public Bookings.Transition cancel(BookingId id, PersonId by) {
        Bookings.Transition done = moves.move(id, new Told("cancelled", by, "given up"), life -> {
            whoActs.asOrFor(life.entry().operator(), by, "booking");
            return life.cancel(moves.now(), moves.settings());
        });
        if (done instanceof Bookings.Transition.Moved moved) {
            letters.cancelled(moved.booking(), by);
        }
        return done;
    }

    @Override
    public Bookings.Transition moveByStaff(BookingId id, PersonId by, String reason) {
        whoActs.asStaff(by, "booking");
        Bookings.Transition done =
                moves.move(id, new Told("moved-by-staff", by, reason), life -> life.giveUp(BookingEvent.MOVE));
        if (done instanceof Bookings.Transition.Moved moved) {
            letters.takenOff(moved.booking(), reason);
        }
        return done;
    }

    @Override
    public Outcome moveTo(MoveBooking order) {
        whoActs.asStaff(order.by(), "booking");
        BookingLife life = moves.lock(order.booking());
        Booking before = life.booking();
        MakeBooking wanted = new MakeBooking(
                order.cell(),
                order.start(),
                before.operator(),
                order.keepsAttendant() ? before.attendant() : null,
                before.course(),
                before.assignment(),
                order.by());
        Request asked = asked(wanted);
        BookingRequest request = asked.request();
        if (request == null) {
            return refused(wanted, asked.refusal().orElseThrow());
        }
        Optional<Refusal> refusal = peopleRule.refusalOfMove(request).or(() -> {
            Cell cell = cells.lock(request.cell().id());
            locks.lock(TakenRule.subjects(wanted));
            return SlotRule.inService(cell)
                    .or(() -> takenRule.underLock(request, before.id().value()));
        });
        if (refusal.isPresent()) {
            return refused(wanted, refusal.get());
        }
        return movedTo(life, request, order);
    }

    private Outcome movedTo(BookingLife life, BookingRequest request, MoveBooking order) {
        Booking before = life.booking();
        Bookings.Transition freed = moves.keep(
                life, life.giveUp(BookingEvent.MOVE), new Told("moved-by-staff", order.by(), order.reason()));
        if (freed instanceof Bookings.Transition.Refused refused) {
            return new Outcome.Refused("state", refused.says(), List.of());
        }
        Booking moved = newBookings.made(
                request,
                life.entry().outsideQuota(),
                before.revision(),
                new Told("moved-here", order.by(), "moved here by staff, nothing counted: " + order.reason()));
        newBookings.standsFor(before.id(), moved.id());
        letters.moved(before, moved, order.reason());
        return new Outcome.Booked(moved);
    }

    @Override
    public Closing close(CloseCell order) {
        whoActs.asStaff(order.by(), "cell");
        whoActs.cellOfThisLab(order.cell());
        return closures.close(order);
    }

    @Override
    @Transactional(readOnly = true)
    public Optional<CellClosure> closure(UUID id) {
        return closures.find(id);
    }

    @Override
    public boolean reopen(UUID closure, PersonId by) {
        whoActs.asStaff(by, "closure");
        return closures.reopen(closure, by);
    }

    @Override
    public int releaseMissed() {
        Instant due = moves.now().minus(moves.settings().grace());
        List<BookingLife> missed = rows.lockNotCheckedInBefore(due.plusNanos(1000));
        return (int) missed.stream().filter(moves::settle).count();
    }
}
