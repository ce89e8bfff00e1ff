package org.standclear.booking;

import java.time.Instant;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.UUID;
import org.springframework.stereotype.Service;
import org.springframework.transaction.annotation.Propagation;
import org.springframework.transaction.annotation.Transactional;
import org.standclear.cell.Cells;
import org.standclear.platform.ids.CellId;
import org.standclear.platform.time.LabTime;

/**
 * Makes many bookings in the caller's transaction. Locks all cells, then all that is claimed, each in one fixed order, so
 * that it waits for others and does not lie across their way.
 */
@Service
public class BookTogether {

    private final BookingDesk desk;
    private final Cells cells;
    private final ClaimLocks locks;
    private final LabTime labTime;

    BookTogether(BookingDesk desk, Cells cells, ClaimLocks locks, LabTime labTime) {
        this.desk = desk;
        this.cells = cells;
        this.locks = locks;
        this.labTime = labTime;
    }

    /** What came of it. */
    public sealed interface Outcome {

        /** All stand, in the order in which they were asked for. */
        record Booked(List<Booking> bookings) implements Outcome {

            public Booked {
                bookings = List.copyOf(bookings);
            }
        }

        /** One was refused; the caller rolls back what was made before it. */
        record Refused(CellId cell, Instant start, String says) implements Outcome {}
    }

    /** Books all, or stops at the first that is refused. */
    @Transactional(propagation = Propagation.MANDATORY)
    public Outcome book(List<MakeBooking> wanted) {
        wanted.stream()
                .map(MakeBooking::cell)
                .distinct()
                .sorted(Comparator.comparing(cell -> cell.value()))
                .forEach(cells::lock);
        List<UUID> subjects =
                wanted.stream().flatMap(one -> TakenRule.subjects(one).stream()).toList();
        locks.lock(subjects);
        List<Booking> booked = new ArrayList<>();
        for (MakeBooking one : wanted) {
            BookingDesk.Outcome outcome = desk.book(one);
            if (outcome instanceof BookingDesk.Outcome.Refused refused) {
                return new Outcome.Refused(one.cell(), one.start(), labTime.full(one.start()) + ": " + refused.says());
            }
            booked.add(((BookingDesk.Outcome.Booked) outcome).booking());
        }
        return new Outcome.Booked(booked);
    }
}
