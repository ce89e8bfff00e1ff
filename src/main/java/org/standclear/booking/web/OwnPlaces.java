package org.standclear.booking.web;

import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.springframework.stereotype.Component;
import org.standclear.booking.Booking;
import org.standclear.booking.Bookings;
import org.standclear.booking.allocation.PlannedTurn;
import org.standclear.booking.allocation.Plans;
import org.standclear.booking.allocation.Window;
import org.standclear.cell.Cells;
import org.standclear.platform.ids.CellId;
import org.standclear.platform.ids.PersonId;
import org.standclear.platform.time.LabTime;

/** What the accepted plan of a window gave somebody. */
@Component
class OwnPlaces {

    private final Plans plans;
    private final Bookings bookings;
    private final Cells cells;
    private final LabTime labTime;

    OwnPlaces(Plans plans, Bookings bookings, Cells cells, LabTime labTime) {
        this.plans = plans;
        this.bookings = bookings;
        this.cells = cells;
        this.labTime = labTime;
    }

    /** The reader's own places and why others are missing; nothing of anybody else. */
    List<String> got(Window window, PersonId me) {
        Window.Accepted accepted = window.accepted();
        if (accepted == null) {
            return List.of();
        }
        List<String> lines = new ArrayList<>();
        plans.places(accepted.search()).stream()
                .filter(place ->
                        place.operator().equals(me) || place.attendant().equals(me))
                .forEach(place -> lines.add(line(place, me)));
        plans.leftOut(accepted.search()).stream()
                .filter(one -> one.operator().equals(me))
                .forEach(one -> lines.add("Turn " + (one.turn() + 1) + " left out: " + one.says()));
        return lines;
    }

    /** As it stands now: since the plan was accepted staff may have moved it, and people may have given it up. */
    private String line(PlannedTurn place, PersonId me) {
        Booking booking =
                Optional.ofNullable(place.booking()).flatMap(bookings::find).orElse(null);
        boolean runs = place.operator().equals(me);
        String part = runs ? ": you run" : ": you stand at the e-stop";
        if (booking == null) {
            return slot(place.cell(), place.start(), place.end()) + part;
        }
        String slot = slot(booking.cell(), booking.start(), booking.end());
        if (!booking.state().holdsItsSlot()) {
            return slot + ": " + booking.state().words();
        }
        if (!runs && !me.equals(booking.attendant())) {
            return slot + ": you are not needed at the e-stop";
        }
        boolean moved = !booking.cell().equals(place.cell()) || !booking.start().equals(place.start());
        return slot + part + (moved ? ", moved by staff" : "");
    }

    private String slot(CellId cell, Instant start, Instant end) {
        return labTime.day(start) + ", " + labTime.times(start, end) + ", "
                + cells.find(cell).map(found -> found.name()).orElse("a cell");
    }
}
