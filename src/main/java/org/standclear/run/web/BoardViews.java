package org.standclear.run.web;

import java.time.Clock;
import java.time.Instant;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import org.jspecify.annotations.Nullable;
import org.springframework.stereotype.Component;
import org.springframework.transaction.annotation.Transactional;
import org.standclear.booking.Booking;
import org.standclear.booking.BookingState;
import org.standclear.booking.Bookings;
import org.standclear.cell.Cell;
import org.standclear.cell.CellState;
import org.standclear.cell.Cells;
import org.standclear.people.Authorisations;
import org.standclear.people.Duty;
import org.standclear.people.People;
import org.standclear.platform.security.SignedInPerson;
import org.standclear.platform.time.LabTime;
import org.standclear.signoff.Handovers;
import org.standclear.signoff.Turn;

/** What the board shows to one person: where somebody is needed now and later, and the own turns. */
@Component
class BoardViews {

    private static final int DAYS = 7;

    private final Cells cells;
    private final Bookings bookings;
    private final Authorisations authorisations;
    private final Handovers handovers;
    private final People people;
    private final LabTime labTime;
    private final Clock clock;

    BoardViews(
            Cells cells,
            Bookings bookings,
            Authorisations authorisations,
            Handovers handovers,
            People people,
            LabTime labTime,
            Clock clock) {
        this.cells = cells;
        this.bookings = bookings;
        this.authorisations = authorisations;
        this.handovers = handovers;
        this.people = people;
        this.labTime = labTime;
        this.clock = clock;
    }

    /**
     * A slot on the board.
     *
     * @param whyNot why this person cannot take it; empty when they can
     */
    record Slot(Instant at, String booking, String cell, String span, String operator, String why, String whyNot) {}

    /** A turn of one's own. */
    record Own(String booking, String cell, String span, String operator) {}

    /** The whole board. */
    record Board(String headline, List<Slot> now, List<Slot> later, List<Own> own) {}

    @Transactional(readOnly = true)
    Board of(SignedInPerson me) {
        Instant now = clock.instant();
        List<Slot> atOnce = new ArrayList<>();
        List<Slot> later = new ArrayList<>();
        LocalDate today = labTime.date(now);
        for (Cell cell : cells.all()) {
            for (int day = 0; day < DAYS; day++) {
                bookings.onDay(cell.id(), today.plusDays(day)).stream()
                        .filter(booking -> booking.end().isAfter(now))
                        .forEach(booking -> add(booking, cell, me, now, atOnce, later));
            }
        }
        later.sort(Comparator.comparing(Slot::at));
        return new Board(headline(atOnce, later), List.copyOf(atOnce), List.copyOf(later), own(me, now));
    }

    private void add(Booking booking, Cell cell, SignedInPerson me, Instant now, List<Slot> atOnce, List<Slot> later) {
        boolean open = booking.attendant() == null && booking.state().ordinal() < BookingState.RUNNING.ordinal();
        if (open) {
            (booking.start().isAfter(now) ? later : atOnce).add(slot(booking, cell, "nobody is named", me));
            return;
        }
        Turn turn = booking.state() == BookingState.RUNNING
                ? handovers.turn(booking.id()).orElse(null)
                : null;
        if (turn != null && turn.over()) {
            atOnce.add(slot(booking, cell, "the turn is over since " + labTime.lately(turn.until()), me));
        }
    }

    private Slot slot(Booking booking, Cell cell, String why, SignedInPerson me) {
        return new Slot(
                booking.start(),
                booking.id().toString(),
                cell.name(),
                // how long somebody's slot is tells of an arrangement that is nobody else's business
                me.isLabStaff()
                        ? labTime.datedSpan(booking.start(), booking.end())
                        : labTime.day(booking.start()) + " from " + labTime.time(booking.start()),
                people.printedName(booking.operator()),
                why,
                whyNot(booking, cell, me));
    }

    private String whyNot(Booking booking, Cell cell, SignedInPerson me) {
        if (booking.involves(me.id())) {
            return "your own run";
        }
        if (cell.state() == CellState.RESTRICTED && !me.isLabStaff()) {
            return "only staff attend here";
        }
        if (!authorisations.holds(me.id(), Duty.ATTENDANT, cell.id(), booking.start())
                || !authorisations.holds(
                        me.id(), Duty.ATTENDANT, cell.id(), booking.end().minusSeconds(1))) {
            return "you are not authorised at this e-stop";
        }
        @Nullable
        Booking other = bookings.of(me.id(), booking.start()).stream()
                .filter(one -> one.start().isBefore(booking.end()))
                .findFirst()
                .orElse(null);
        return other == null ? "" : "you are at " + labTime.datedSpan(other.start(), other.end()) + " elsewhere";
    }

    private List<Own> own(SignedInPerson me, Instant now) {
        return bookings.of(me.id(), now).stream()
                .filter(booking -> me.id().equals(booking.attendant()))
                .filter(booking -> booking.state().ordinal() <= BookingState.READY.ordinal())
                .map(booking -> new Own(
                        booking.id().toString(),
                        cells.find(booking.cell()).map(Cell::name).orElse("unknown"),
                        labTime.datedSpan(booking.start(), booking.end()),
                        people.printedName(booking.operator())))
                .toList();
    }

    private static String headline(List<Slot> now, List<Slot> later) {
        if (!now.isEmpty()) {
            Slot first = now.get(0);
            return "Needed now: " + first.cell() + ", " + first.operator() + ".";
        }
        return later.isEmpty()
                ? "Every slot of the next days has its attendant."
                : "Next needed: " + later.get(0).cell() + " " + later.get(0).span() + ".";
    }
}
