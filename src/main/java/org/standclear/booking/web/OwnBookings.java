package org.standclear.booking.web;

import java.util.Collection;
import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.Map;
import org.jspecify.annotations.Nullable;
import org.springframework.stereotype.Component;
import org.standclear.booking.Booking;
import org.standclear.booking.Bookings;
import org.standclear.cell.Cell;
import org.standclear.cell.Cells;
import org.standclear.people.People;
import org.standclear.platform.ids.BookingId;
import org.standclear.platform.ids.CellId;
import org.standclear.platform.ids.PersonId;
import org.standclear.platform.security.SignedInPerson;
import org.standclear.platform.time.LabTime;
import org.standclear.platform.web.NotFoundException;
import org.standclear.platform.web.StaleFormException;

/** Finds bookings for people who may act on them; everybody else's are not there. */
@Component
class OwnBookings {

    private final Bookings bookings;
    private final Cells cells;
    private final People people;
    private final LabTime labTime;

    OwnBookings(Bookings bookings, Cells cells, People people, LabTime labTime) {
        this.bookings = bookings;
        this.cells = cells;
        this.people = people;
        this.labTime = labTime;
    }

    /** The operator's own booking, or any for lab staff. */
    Booking toActOn(BookingId id, SignedInPerson me) {
        return bookings.find(id)
                .filter(booking -> booking.operator().equals(me.id()) || me.isLabStaff())
                .orElseThrow(() -> new NotFoundException("booking"));
    }

    /** Also for the attendant, who may step back. */
    Booking toSee(BookingId id, SignedInPerson me) {
        return bookings.find(id)
                .filter(booking -> booking.involves(me.id()) || me.isLabStaff())
                .orElseThrow(() -> new NotFoundException("booking"));
    }

    /** "Avocet, Thu 12 Mar, 12:07-12:37". */
    String title(Booking booking) {
        return title(cellName(booking), booking);
    }

    private String title(String cell, Booking booking) {
        return cell + ", " + labTime.day(booking.start()) + ", " + labTime.times(booking.start(), booking.end());
    }

    /** Names for a list of these people's bookings, and of the lab's cells, asked together. */
    Listed listed(Collection<PersonId> whose) {
        Map<CellId, String> cellNames = new HashMap<>();
        cells.all().forEach(cell -> cellNames.put(cell.id(), cell.name()));
        return new Listed(people.printedNames(whose), cellNames);
    }

    /** The same words as those of one booking. */
    final class Listed {

        private final Map<PersonId, String> names;
        private final Map<CellId, String> cellNames;

        private Listed(Map<PersonId, String> names, Map<CellId, String> cellNames) {
            this.names = names;
            this.cellNames = cellNames;
        }

        String title(Booking booking) {
            return OwnBookings.this.title(cell(booking.cell()), booking);
        }

        String cell(CellId cell) {
            return cellNames.getOrDefault(cell, "A cell");
        }

        String name(PersonId person) {
            return names.getOrDefault(person, People.UNKNOWN);
        }
    }

    String cellName(Booking booking) {
        return cells.find(booking.cell()).map(Cell::name).orElse("A cell");
    }

    String name(@Nullable PersonId person) {
        return person == null ? "needs one" : people.printedName(person);
    }

    /** The form was filled in for an older state of the booking; nothing has been stored. */
    StaleFormException stale(Booking now, Map<String, String> yours) {
        Map<String, String> current = new LinkedHashMap<>();
        current.put("State", now.state().words());
        current.put("E-stop attendant", name(now.attendant()));
        current.put("Program", now.revision() == null ? "none named" : "named");
        return new StaleFormException(title(now), "/bookings/" + now.id(), yours, current);
    }
}
