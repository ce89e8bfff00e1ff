package org.standclear.booking;

import java.time.Clock;
import java.time.Duration;
import java.time.Instant;
import java.time.LocalDate;
import java.util.List;
import java.util.Optional;
import java.util.function.UnaryOperator;
import org.jspecify.annotations.Nullable;
import org.springframework.stereotype.Service;
import org.springframework.transaction.annotation.Transactional;
import org.standclear.booking.SlotCalendar.CellDay;
import org.standclear.cell.Cell;
import org.standclear.cell.Cells;
import org.standclear.platform.ids.CellId;
import org.standclear.platform.ids.LabId;
import org.standclear.platform.ids.PersonId;
import org.standclear.platform.lab.Labs;
import org.standclear.platform.time.LabTime;

/** The calendar, a day at a time, with as many queries for twelve cells as for one. */
@Service
@Transactional(readOnly = true)
class JdbcSlotCalendar implements SlotCalendar {

    /** Longer than any horizon, also one that was shortened after somebody booked. */
    private static final Duration FARTHEST = Duration.ofDays(400);

    private final Cells cells;
    private final OpeningHours openingHours;
    private final BookingNumbers numbers;
    private final BookingRows bookings;
    private final ClosureRows closures;
    private final FreeSlots freeSlots;
    private final OfferRows offers;
    private final PersonsLength lengths;
    private final Labs labs;
    private final LabTime labTime;
    private final Clock clock;

    JdbcSlotCalendar(
            Cells cells,
            OpeningHours openingHours,
            BookingNumbers numbers,
            BookingRows bookings,
            ClosureRows closures,
            FreeSlots freeSlots,
            OfferRows offers,
            PersonsLength lengths,
            Labs labs,
            LabTime labTime,
            Clock clock) {
        this.cells = cells;
        this.openingHours = openingHours;
        this.numbers = numbers;
        this.bookings = bookings;
        this.closures = closures;
        this.freeSlots = freeSlots;
        this.offers = offers;
        this.lengths = lengths;
        this.labs = labs;
        this.labTime = labTime;
        this.clock = clock;
    }

    @Override
    public DayPlan day(LocalDate date) {
        return day(date, numbers.inForce().slotLength(), null);
    }

    @Override
    public DayPlan day(LocalDate date, PersonId taker) {
        return day(date, lengthFor(taker), taker);
    }

    @Override
    public Duration lengthFor(PersonId taker) {
        return lengths.longestOf(taker, numbers.inForce());
    }

    private DayPlan day(LocalDate date, Duration taking, @Nullable PersonId reader) {
        LabId lab = labs.theLab().id();
        Instant from = startOf(date);
        Instant until = startOf(date.plusDays(1));
        BookingSettings settings = numbers.inForce();
        Instant now = clock.instant();
        OpeningHours.DayHours hours = openingHours.on(date);
        List<Booking> booked = bookings.ofLab(lab, from, until).stream()
                .map(life -> life.bookingAsOf(now, settings))
                .filter(booking -> booking.state().holdsItsSlot() || booking.state() == BookingState.MISSED)
                .toList();
        List<CellClosure> closed = closures.ofLab(lab, from, until);
        List<Held> held = offers.heldBetween(from, until, now).stream()
                .map(offer ->
                        new Held(offer.slot(), offer.until(), offer.person().equals(reader) ? offer.id() : null))
                .toList();
        return new DayPlan(
                date,
                hours,
                cells.all().stream()
                        .map(cell -> cellDay(
                                cell,
                                grid(settings)
                                        .slots(cell.id(), date, hours.periods(), cell.startOffsetMinutes(), taking),
                                booked,
                                closed,
                                held))
                        .toList());
    }

    private static CellDay cellDay(
            Cell cell, List<Slot> slots, List<Booking> booked, List<CellClosure> closed, List<Held> held) {
        List<Booking> here = booked.stream()
                .filter(booking -> booking.cell().equals(cell.id()))
                .toList();
        List<CellClosure> kept = closed.stream()
                .filter(closure -> closure.cell().equals(cell.id()))
                .toList();
        List<Held> offered =
                held.stream().filter(one -> one.slot().cell().equals(cell.id())).toList();
        List<Slot> free = slots.stream()
                .filter(slot -> here.stream()
                                .noneMatch(booking ->
                                        booking.state().holdsItsSlot() && slot.overlaps(booking.start(), booking.end()))
                        && kept.stream().noneMatch(closure -> slot.overlaps(closure.start(), closure.end()))
                        && offered.stream()
                                .noneMatch(one -> slot.overlaps(
                                        one.slot().start(), one.slot().end())))
                .toList();
        return new CellDay(cell, here, kept, offered, free);
    }

    @Override
    public Optional<Slot> slotAt(CellId id, Instant start) {
        LocalDate day = labTime.date(start);
        return cells.find(id).stream()
                .flatMap(
                        cell -> grid(numbers.inForce())
                                .slots(id, day, openingHours.on(day).periods(), cell.startOffsetMinutes())
                                .stream())
                .filter(slot -> slot.start().equals(start))
                .findFirst();
    }

    @Override
    public List<Booking> leftOutside(UnaryOperator<OpeningHours.DayHours> others) {
        Instant now = clock.instant();
        BookingSettings settings = numbers.inForce();
        return bookings.ofLab(labs.theLab().id(), now, now.plus(FARTHEST)).stream()
                .map(life -> life.bookingAsOf(now, settings))
                .filter(booking -> booking.state().holdsItsSlot())
                .filter(booking -> {
                    OpeningHours.DayHours hours = openingHours.on(labTime.date(booking.start()));
                    return within(booking, hours) && !within(booking, others.apply(hours));
                })
                .toList();
    }

    private boolean within(Booking booking, OpeningHours.DayHours hours) {
        return hours.spans(
                booking.start().atZone(labTime.zone()).toLocalTime(),
                booking.end().atZone(labTime.zone()).toLocalTime());
    }

    @Override
    public LocalDate lastDay() {
        return labTime.today().plusDays(numbers.inForce().horizonDays());
    }

    @Override
    public List<Slot> nextFree(PersonId operator, Instant from, int atMost) {
        return freeSlots.next(operator, from, atMost);
    }

    private SlotGrid grid(BookingSettings settings) {
        return new SlotGrid(labTime.zone(), settings.slotLength());
    }

    private Instant startOf(LocalDate day) {
        return day.atStartOfDay(labTime.zone()).toInstant();
    }
}
