package org.standclear.run.web;

import java.time.Clock;
import java.time.Instant;
import java.util.List;
import java.util.Optional;
import org.springframework.stereotype.Component;
import org.springframework.transaction.annotation.Transactional;
import org.standclear.booking.Booking;
import org.standclear.booking.BookingState;
import org.standclear.booking.Bookings;
import org.standclear.cell.Cell;
import org.standclear.cell.CellStop;
import org.standclear.cell.CellStops;
import org.standclear.cell.Cells;
import org.standclear.platform.digest.Sha256;
import org.standclear.platform.ids.BookingId;
import org.standclear.platform.ids.CellId;
import org.standclear.platform.security.Role;
import org.standclear.platform.security.SignedInPerson;
import org.standclear.platform.web.NotFoundException;
import org.standclear.run.web.BenchView.Stage;
import org.standclear.signoff.SignoffDesk;
import org.standclear.signoff.SignoffDesk.Standing;

/** Builds the screen of a cell: finds whose turn at the cell it is, brings that booking up to date, shows one act. */
@Component
class BenchScreens {

    private final Cells cells;
    private final CellStops stops;
    private final Bookings bookings;
    private final SignoffDesk desk;
    private final BenchCards cards;
    private final BenchStages stages;
    private final BenchSwaps swaps;
    private final Clock clock;

    BenchScreens(
            Cells cells,
            CellStops stops,
            Bookings bookings,
            SignoffDesk desk,
            BenchCards cards,
            BenchStages stages,
            BenchSwaps swaps,
            Clock clock) {
        this.cells = cells;
        this.stops = stops;
        this.bookings = bookings;
        this.desk = desk;
        this.cards = cards;
        this.stages = stages;
        this.swaps = swaps;
        this.clock = clock;
    }

    /** The screen as this account sees it. */
    @Transactional
    BenchView of(CellId id, SignedInPerson me) {
        Cell cell = cells.find(id).orElseThrow(() -> new NotFoundException("cell"));
        BenchDraft draft = new BenchDraft(cell, me);
        if (!me.hasAPart()) {
            return stamped(ofAnotherLab(draft, cell), cell);
        }
        Instant now = clock.instant();
        Optional<Booking> here = at(id, now);
        List<CellStop> open = stops.open(id);
        if (here.isEmpty() && BenchStages.comesFirst(open, null)) {
            return stamped(stages.stoppedBetween(draft, open, cell.name(), me, now), cell);
        }
        if (here.isEmpty()) {
            return stamped(idle(draft, cell), cell);
        }
        if (!maySee(here.get(), me)) {
            return stamped(
                    draft.stage(Stage.FOREIGN)
                            .head(
                                    cell.name() + " is taken",
                                    "This slot is somebody else's.",
                                    "Anyone may log a stop or hold the cell."),
                    cell);
        }
        Standing standing = desk.look(here.get().id());
        Cell fresh = cells.find(id).orElseThrow();
        draft = new BenchDraft(fresh, me)
                .booking(cards.of(standing, fresh))
                .list(cards.list(standing))
                .notices(cards.notices(standing))
                .obstacles(standing.obstacles());
        Booking booking = standing.prepared().booking();
        return stamped(
                BenchStages.comesFirst(open, booking)
                        ? stages.stoppedBetween(draft, open, stages.slot(booking), me, now)
                        : stages.choose(draft, standing, me, now),
                fresh);
    }

    /** The run that is not closed out, else the booking whose slot it is, else the next one of the day. */
    private Optional<Booking> at(CellId cell, Instant now) {
        Optional<Booking> current = bookings.currentOrNext(cell, now);
        List<Booking> open =
                bookings.awaitingCloseOut(cell, current.map(Booking::id).orElseGet(BookingId::next));
        if (!open.isEmpty()
                && current.filter(booking -> booking.state().awaitsCloseOut()).isEmpty()) {
            return Optional.of(open.get(0));
        }
        return current;
    }

    private static BenchDraft ofAnotherLab(BenchDraft draft, Cell cell) {
        return draft.stage(Stage.FOREIGN)
                .head(
                        "You have no part in this lab",
                        cell.name() + " belongs to another lab than yours.",
                        "Whoever stands at the cell may log a stop or hold the cell.");
    }

    private static BenchDraft idle(BenchDraft draft, Cell cell) {
        return cell.state().mayRun()
                ? draft.stage(Stage.IDLE).head(cell.name() + " is free", "Nobody is booked here now.", "")
                : draft.stage(Stage.IDLE)
                        .head(
                                "No release here",
                                cell.name() + " is " + cell.state().words() + ".",
                                "Because: " + cell.stateReason()
                                        + ". A technician or an instructor puts it back after a day test that passes.");
    }

    private boolean maySee(Booking booking, SignedInPerson me) {
        return me.isLabStaff()
                || me.is(Role.BENCH)
                || me.is(Role.REVIEWER)
                || booking.involves(me.id())
                || swaps.awaits(booking, me);
    }

    private BenchView stamped(BenchDraft draft, Cell cell) {
        String seen = draft.seen() + cell.state() + cell.stateReason() + cell.currentVersion();
        return draft.view(Sha256.of(seen).substring(0, 16));
    }

    /** Whether the booking belongs to that cell; forms of another cell's page change nothing. */
    Booking ofCell(CellId cell, BookingId booking, SignedInPerson me) {
        return bookings.find(booking)
                .filter(found -> found.cell().equals(cell))
                .filter(found -> maySee(found, me))
                .filter(found -> found.state() != BookingState.CANCELLED)
                .orElseThrow(() -> new NotFoundException("booking"));
    }
}
