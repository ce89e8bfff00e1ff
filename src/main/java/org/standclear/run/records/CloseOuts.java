package org.standclear.run.records;

import java.time.Instant;
import java.util.Optional;
import org.jspecify.annotations.Nullable;
import org.springframework.stereotype.Component;
import org.standclear.booking.Booking;
import org.standclear.booking.Bookings;
import org.standclear.cell.CellStates;
import org.standclear.cell.CellTag;
import org.standclear.platform.ids.PersonId;
import org.standclear.run.CloseOutItem;
import org.standclear.run.Run;
import org.standclear.run.RunEvent;
import org.standclear.run.RunEvent.Kind;
import org.standclear.run.RunLog.Logged;
import org.standclear.run.RunState;

/** Takes the close-out one tap after the other; the last one hands the cell back. */
@Component
class CloseOuts {

    private final Bookings bookings;
    private final CellStates cellStates;
    private final RunRows runs;
    private final EventWriter events;

    CloseOuts(Bookings bookings, CellStates cellStates, RunRows runs, EventWriter events) {
        this.bookings = bookings;
        this.cellStates = cellStates;
        this.runs = runs;
        this.events = events;
    }

    /** The booking is locked, and the person may log it. */
    Logged tap(Booking booking, @Nullable Run run, CloseOutItem item, String value, PersonId by, Instant now) {
        if (run == null || run.state() != RunState.FINISHED) {
            return new Logged.Refused(
                    "state",
                    "The booking is " + booking.state().words() + "; the close-out begins when the run is finished.");
        }
        Optional<CloseOutItem> due = CloseOutItem.after(events.closeOutTaps(booking.id()));
        Optional<CloseOutItem.Choice> choice = item.choice(value);
        if (due.filter(item::equals).isEmpty() || choice.isEmpty()) {
            return new Logged.Refused("order", "That item is not due; the close-out goes one tap after the other.");
        }
        if (!item.choices(events.protectiveStops(booking.id()) > 0).contains(choice.get())) {
            return new Logged.Refused("odd", "The arm stopped itself in this slot: tap what it was.");
        }
        RunEvent event = events.add(
                booking,
                run,
                Kind.CLOSE_OUT,
                item.number(),
                value,
                item.challenge() + " " + choice.get().words() + ".",
                by,
                now);
        if (!choice.get().holdsCell().isEmpty()) {
            hold(booking, choice.get().holdsCell(), by);
        }
        if (CloseOutItem.after(item.number()).isEmpty()) {
            JdbcRunLog.moved(bookings.markClosedOut(booking.id(), by));
            runs.change(run.closedOut(now));
        }
        return new Logged.Kept(event);
    }

    private void hold(Booking booking, String because, PersonId by) {
        cellStates.stop(new CellStates.StopCell(
                booking.cell(), CellTag.Kind.HOLD, by, "close-out: " + because, booking.operator()));
    }
}
