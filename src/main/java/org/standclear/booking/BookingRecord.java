package org.standclear.booking;

import org.springframework.stereotype.Component;
import org.standclear.booking.BookingMoves.Told;
import org.standclear.cell.Cell;
import org.standclear.cell.Cells;
import org.standclear.platform.ids.CellId;
import org.standclear.platform.ids.PersonId;
import org.standclear.platform.lab.Labs;
import org.standclear.platform.live.LiveEvents;
import org.standclear.platform.time.LabTime;
import org.standclear.trail.Trail;
import org.standclear.trail.TrailEntry;

/** Tells the lab's record what happened to bookings and closures. */
@Component
class BookingRecord {

    private final Trail trail;
    private final Labs labs;
    private final Cells cells;
    private final LiveEvents live;
    private final LabTime labTime;

    BookingRecord(Trail trail, Labs labs, Cells cells, LiveEvents live, LabTime labTime) {
        this.trail = trail;
        this.labs = labs;
        this.cells = cells;
        this.live = live;
        this.labTime = labTime;
    }

    /** "booking.checked-in" on the booking, with everybody and everything that it names. */
    void tell(Booking booking, Told told) {
        tell(booking, where(booking.cell()), told);
    }

    /** The same for who knows the cell's name. */
    void tell(Booking booking, String cellName, Told told) {
        live.cellChanged(booking.cell());
        TrailEntry entry = TrailEntry.of(
                        labs.theLab().id(),
                        "booking." + told.kind(),
                        booking.id(),
                        told.by(),
                        cellName + ", " + labTime.datedSpan(booking.start(), booking.end()) + ": " + told.words())
                .with("cell", booking.cell())
                .with("start", booking.start())
                .with("end", booking.end())
                .with("operator", booking.operator())
                .with("attendant", booking.attendant() == null ? "needs one" : booking.attendant())
                .with("state", booking.state().words());
        trail.append(booking.revision() == null ? entry : entry.with("revision", booking.revision()));
    }

    void tell(CellClosure closure, String kind, PersonId by) {
        live.cellChanged(closure.cell());
        trail.append(TrailEntry.of(
                        labs.theLab().id(),
                        "booking." + kind,
                        closure.id(),
                        by,
                        where(closure.cell()) + ", " + labTime.day(closure.start()) + " "
                                + labTime.times(closure.start(), closure.end()) + ": "
                                + closure.kind().words() + ", " + closure.words())
                .with("cell", closure.cell())
                .with("start", closure.start())
                .with("end", closure.end())
                .with("kind", closure.kind()));
    }

    private String where(CellId cell) {
        return cells.find(cell).map(Cell::name).orElse("A cell");
    }
}
