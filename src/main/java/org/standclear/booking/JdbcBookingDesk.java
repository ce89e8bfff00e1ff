package org.standclear.booking;

import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.UUID;
import org.jspecify.annotations.Nullable;
import org.springframework.stereotype.Service;
import org.springframework.transaction.annotation.Transactional;
import org.standclear.booking.BookingMoves.Told;
import org.standclear.booking.BookingRequest.Refusal;
import org.standclear.booking.Claims.Claim;
import org.standclear.booking.Claims.Kind;
import org.standclear.cell.Cell;
import org.standclear.cell.Cells;
import org.standclear.platform.ids.BookingId;
import org.standclear.platform.ids.PersonId;
import org.standclear.platform.ids.RevisionId;
import org.standclear.platform.lab.Labs;
import org.standclear.platform.time.SqlTime;
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
    private final Claims claims;
    private final ClaimLocks locks;
    private final SlotRule slotRule;
    private final PeopleRule peopleRule;
    private final Quota quota;
    private final TakenRule takenRule;
    private final FreeSlots freeSlots;
    private final CellClosures closures;
    private final BookingRecord record;
    private final Cells cells;
    private final Parties.Lookup parties;
    private final Labs labs;

    JdbcBookingDesk(
            BookingRows rows,
            BookingMoves moves,
            Claims claims,
            ClaimLocks locks,
            SlotRule slotRule,
            PeopleRule peopleRule,
            Quota quota,
            TakenRule takenRule,
            FreeSlots freeSlots,
            CellClosures closures,
            BookingRecord record,
            Cells cells,
            Parties.Lookup parties,
            Labs labs) {
        this.rows = rows;
        this.moves = moves;
        this.claims = claims;
        this.locks = locks;
        this.slotRule = slotRule;
        this.peopleRule = peopleRule;
        this.quota = quota;
        this.takenRule = takenRule;
        this.freeSlots = freeSlots;
        this.closures = closures;
        this.record = record;
        this.cells = cells;
        this.parties = parties;
        this.labs = labs;
    }

    @Override
    public Outcome book(MakeBooking wanted) {
        Request asked = asked(wanted);
        if (asked.request() == null) {
            return refused(wanted, asked.refusal().orElseThrow());
        }
        BookingRequest request = asked.request();
        Optional<Refusal> refusal = beforeLocks(request).or(() -> underLocks(request));
        return refusal.isPresent() ? refused(wanted, refusal.get()) : new Outcome.Booked(made(request));
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
                        .or(() -> takenRule.atFirstSight(request))
                        .or(() -> quota.refusal(request));
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
        Cell cell = cells.find(wanted.cell()).orElseThrow(() -> new NotFoundException("cell"));
        BookingSettings settings = moves.settings();
        Instant now = moves.now();
        Optional<Refusal> noSlot =
                SlotRule.inService(cell).or(() -> slotRule.refusal(cell, wanted.start(), settings, now));
        if (noSlot.isPresent()) {
            return new Request(null, noSlot);
        }
        Slot slot = new Slot(cell.id(), wanted.start(), wanted.start().plus(settings.slotLength()));
        Parties of = parties.of(wanted.operator(), wanted.by(), wanted.attendant());
        if (of.person(wanted.operator()).isEmpty() || of.person(wanted.by()).isEmpty()) {
            throw new NotFoundException("person");
        }
        return new Request(new BookingRequest(wanted, slot, cell, of, settings, now), Optional.empty());
    }

    private Optional<Refusal> beforeLocks(BookingRequest request) {
        return peopleRule.refusal(request).or(() -> takenRule.cellAtFirstSight(request));
    }

    private Optional<Refusal> underLocks(BookingRequest request) {
        Cell cell = cells.lock(request.cell().id());
        locks.lock(TakenRule.subjects(request.wanted()));
        return SlotRule.inService(cell).or(() -> takenRule.underLock(request)).or(() -> quota.refusal(request));
    }

    private Booking made(BookingRequest request) {
        return made(
                request,
                request.isOutsideQuota(),
                null,
                new Told("made", request.wanted().by(), "booked"));
    }

    private Booking made(BookingRequest request, boolean outsideQuota, @Nullable RevisionId revision, Told told) {
        MakeBooking wanted = request.wanted();
        Slot slot = request.slot();
        BookingLife life = BookingLife.begun(
                new BookingLife.Entry(
                        BookingId.next(),
                        slot.cell(),
                        SqlTime.stored(slot.start()),
                        SqlTime.stored(slot.end()),
                        wanted.operator(),
                        peopleRule.courseOf(wanted),
                        wanted.assignment(),
                        outsideQuota),
                wanted.attendant());
        rows.insert(labs.theLab().id(), life, wanted.by(), request.now());
        UUID id = life.entry().id().value();
        List<Claim> held = new ArrayList<>();
        held.add(Claim.ofBooking(id, Kind.CELL, slot.cell().value(), slot.start(), slot.end()));
        held.add(Claim.ofBooking(id, Kind.OPERATOR, wanted.operator().value(), slot.start(), slot.end()));
        if (wanted.attendant() != null) {
            held.add(Claim.ofBooking(id, Kind.ATTENDANT, wanted.attendant().value(), slot.start(), slot.end()));
        }
        claims.add(held);
        if (revision != null && life.nameProgram(revision).isEmpty()) {
            rows.update(life);
        }
        Booking booking = life.booking();
        record.tell(booking, request.cell().name(), told);
        return booking;
    }

    private Outcome.Refused refused(MakeBooking wanted, Refusal refusal) {
        return new Outcome.Refused(
                refusal.rule(), refusal.says(), freeSlots.next(wanted.operator(), wanted.start(), NEXT_FREE));
    }

    @Override
    public Bookings.Transition cancel(BookingId id, PersonId by) {
        return moves.move(
                id, new Told("cancelled", by, "given up"), life -> life.cancel(moves.now(), moves.settings()));
    }

    @Override
    public Bookings.Transition moveByStaff(BookingId id, PersonId by, String reason) {
        return moves.move(id, new Told("moved-by-staff", by, reason), life -> life.giveUp(BookingEvent.MOVE));
    }

    @Override
    public Outcome moveTo(MoveBooking order) {
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
        Optional<Refusal> refusal = peopleRule.refusal(request).or(() -> {
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
        return new Outcome.Booked(made(
                request,
                life.entry().outsideQuota(),
                before.revision(),
                new Told("moved-here", order.by(), "moved here by staff, nothing counted: " + order.reason())));
    }

    @Override
    public Closing close(CloseCell order) {
        return closures.close(order);
    }

    @Override
    @Transactional(readOnly = true)
    public Optional<CellClosure> closure(UUID id) {
        return closures.find(id);
    }

    @Override
    public boolean reopen(UUID closure, PersonId by) {
        return closures.reopen(closure, by);
    }

    @Override
    public int releaseMissed() {
        Instant due = moves.now().minus(moves.settings().grace());
        List<BookingLife> missed = rows.lockNotCheckedInBefore(due.plusNanos(1000));
        return (int) missed.stream().filter(moves::settle).count();
    }
}
