package org.standclear.booking;

import java.time.Duration;
import java.time.Instant;
import java.util.List;
import java.util.Optional;
import java.util.UUID;
import java.util.stream.Stream;
import org.springframework.stereotype.Component;
import org.standclear.booking.BookingDesk.Closing;
import org.standclear.booking.Claims.Claim;
import org.standclear.cell.Cells;
import org.standclear.platform.ids.CellId;
import org.standclear.platform.ids.Id;
import org.standclear.platform.ids.PersonId;
import org.standclear.platform.lab.Labs;
import org.standclear.platform.text.PlainText;
import org.standclear.platform.time.LabTime;
import org.standclear.platform.time.SqlTime;

/** Keeps cells for staff, for a class or a repair. */
@Component
class CellClosures {

    private static final Duration LONGEST = Duration.ofDays(60);
    private static final int LONGEST_WORDS = 200;

    private final ClosureRows closures;
    private final BookingRows bookings;
    private final BookingMoves moves;
    private final Claims claims;
    private final OfferRows offers;
    private final ClaimLocks locks;
    private final BookingRecord record;
    private final Cells cells;
    private final Labs labs;
    private final LabTime labTime;

    CellClosures(
            ClosureRows closures,
            BookingRows bookings,
            BookingMoves moves,
            Claims claims,
            OfferRows offers,
            ClaimLocks locks,
            BookingRecord record,
            Cells cells,
            Labs labs,
            LabTime labTime) {
        this.closures = closures;
        this.bookings = bookings;
        this.moves = moves;
        this.claims = claims;
        this.offers = offers;
        this.locks = locks;
        this.record = record;
        this.cells = cells;
        this.labs = labs;
        this.labTime = labTime;
    }

    Closing close(CloseCell order) {
        if (!order.start().isBefore(order.end())) {
            return refused("until", "The end has to be after the start.");
        }
        if (!order.end().isAfter(moves.now())) {
            return refused("until", "That time is past.");
        }
        if (order.start().plus(LONGEST).isBefore(order.end())) {
            return refused("until", "Staff keep a cell for 60 days at most; for longer, take it out of service.");
        }
        PlainText.Checked words = PlainText.check(order.words(), LONGEST_WORDS);
        if (words instanceof PlainText.Refused text) {
            return refused("words", text.says());
        }
        return closeFor(order, ((PlainText.Fine) words).text());
    }

    private Closing closeFor(CloseCell order, String words) {
        Instant start = SqlTime.stored(order.start());
        Instant end = SqlTime.stored(order.end());
        cells.lock(order.cell());
        locks.lock(List.of(order.cell().value()));
        List<Claim> standing = claims.on(List.of(order.cell().value()), start, end).stream()
                .filter(claim ->
                        !moves.settleIfMissed(claim.booking()) && !offers.freeIfOver(claim.offer(), moves.now()))
                .toList();
        if (!standing.isEmpty()) {
            return standing(order.cell(), start, end);
        }
        CellClosure closure =
                new CellClosure(Id.newValue(), order.cell(), start, end, order.kind(), words, order.by(), moves.now());
        closures.insert(labs.theLab().id(), closure);
        claims.add(Claim.ofClosure(closure.id(), order.cell().value(), start, end));
        record.tell(closure, "cell-kept", order.by());
        return new Closing.Closed(closure);
    }

    private Closing standing(CellId cell, Instant start, Instant end) {
        List<Booking> bookings = this.bookings.ofCell(cell, start, end).stream()
                .map(life -> life.bookingAsOf(moves.now(), moves.settings()))
                .filter(booking -> booking.state().holdsItsSlot())
                .toList();
        Stream<CellClosure> kept = closures.ofLab(labs.theLab().id(), start, end).stream()
                .filter(closure -> closure.cell().equals(cell));
        String says = bookings.isEmpty()
                ? kept.findFirst()
                        .map(closure -> "Staff keep the cell already from " + labTime.full(closure.start()) + " until "
                                + labTime.full(closure.end()) + ": " + closure.words())
                        .orElse("The cell is claimed in that time.")
                : bookings.size() + (bookings.size() == 1 ? " booking stands" : " bookings stand")
                        + " in that time. Choose another time, or have them cancelled or moved first.";
        return new Closing.Refused("from", says, bookings);
    }

    private static Closing refused(String field, String says) {
        return new Closing.Refused(field, says, List.of());
    }

    Optional<CellClosure> find(UUID id) {
        return closures.find(id);
    }

    boolean reopen(UUID id, PersonId by) {
        return closures.find(id)
                .filter(closure -> closures.remove(labs.theLab().id(), id, by, moves.now()))
                .map(closure -> {
                    claims.giveUpClosure(id);
                    record.tell(closure, "cell-reopened", by);
                    return true;
                })
                .orElse(false);
    }
}
