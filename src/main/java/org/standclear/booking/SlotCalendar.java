package org.standclear.booking;

import java.time.Duration;
import java.time.Instant;
import java.time.LocalDate;
import java.util.List;
import java.util.Optional;
import java.util.UUID;
import java.util.function.UnaryOperator;
import org.jspecify.annotations.Nullable;
import org.standclear.cell.Cell;
import org.standclear.platform.ids.CellId;
import org.standclear.platform.ids.PersonId;

/** What is booked, kept and free, day by day. */
public interface SlotCalendar {

    /** Everything on all cells of the lab on one day. */
    DayPlan day(LocalDate date);

    /** The same with the free slots that this person could take, who may need longer ones than the lab's. */
    DayPlan day(LocalDate date, PersonId taker);

    /** How long the person's slots are at most, whatever the run is for. */
    Duration lengthFor(PersonId taker);

    /** The slot of the cell's grid that begins at the instant, if there is one. */
    Optional<Slot> slotAt(CellId cell, Instant start);

    /** The last day on which slots can be booked now. */
    LocalDate lastDay();

    /** Bookings ahead that fit into the hours as they are and not into others; by start. */
    List<Booking> leftOutside(UnaryOperator<OpeningHours.DayHours> others);

    /** The next slots, at the instant or after, on cells that the person may operate and at times the person has free. */
    List<Slot> nextFree(PersonId operator, Instant from, int atMost);

    /** One day of the lab; cells by name. */
    record DayPlan(LocalDate date, OpeningHours.DayHours hours, List<CellDay> cells) {

        public DayPlan {
            cells = List.copyOf(cells);
        }
    }

    /**
     * One day of a cell.
     *
     * @param bookings those that hold their slot, held it to the end, or were missed; by start
     * @param closures what staff keep it for; by start
     * @param held slots that an offer holds for somebody on the waiting list for some minutes; by start
     * @param free slots of the grid that nothing claims, past ones too; whatever state the cell is in
     */
    record CellDay(Cell cell, List<Booking> bookings, List<CellClosure> closures, List<Held> held, List<Slot> free) {

        public CellDay {
            bookings = List.copyOf(bookings);
            closures = List.copyOf(closures);
            held = List.copyOf(held);
            free = List.copyOf(free);
        }
    }

    /**
     * A slot that is neither free nor booked; for whom it is held stays with the waiting list.
     *
     * @param until it is free again then, unless it is taken
     * @param ownOffer the offer, for the person to whom it was made; null for everybody else
     */
    record Held(Slot slot, Instant until, @Nullable UUID ownOffer) {}
}
