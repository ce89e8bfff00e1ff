package org.standclear.desk.web;

import java.time.Clock;
import java.time.Duration;
import java.time.Instant;
import java.util.Comparator;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.function.Function;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.springframework.stereotype.Component;
import org.standclear.booking.Booking;
import org.standclear.booking.BookingNumbers;
import org.standclear.booking.BookingSettings;
import org.standclear.booking.BookingState;
import org.standclear.booking.CellStrips;
import org.standclear.booking.SlotCalendar;
import org.standclear.booking.SlotCalendar.CellDay;
import org.standclear.booking.SlotCalendar.DayPlan;
import org.standclear.cell.Cell;
import org.standclear.people.DutyRoster;
import org.standclear.people.People;
import org.standclear.people.Person;
import org.standclear.platform.ids.PersonId;
import org.standclear.platform.security.SignedInPerson;
import org.standclear.platform.time.LabTime;
import org.standclear.signoff.Release;
import org.standclear.signoff.Releases;

/** Puts the Today page together with as many queries on a full day as on an empty one, but one for each release. */
@Component
class TodayViews {

    private static final Duration SOON = Duration.ofHours(1);

    private final SlotCalendar calendar;
    private final People people;
    private final DutyRoster roster;
    private final BookingNumbers numbers;
    private final Releases releases;
    private final LabTime labTime;
    private final Clock clock;

    TodayViews(
            SlotCalendar calendar,
            People people,
            DutyRoster roster,
            BookingNumbers numbers,
            Releases releases,
            LabTime labTime,
            Clock clock) {
        this.calendar = calendar;
        this.people = people;
        this.roster = roster;
        this.numbers = numbers;
        this.releases = releases;
        this.labTime = labTime;
        this.clock = clock;
    }

    TodayView now(SignedInPerson me) {
        Instant now = clock.instant();
        DayPlan plan = me.isLabStaff() ? calendar.day(labTime.date(now)) : calendar.day(labTime.date(now), me.id());
        List<Booking> bookings =
                plan.cells().stream().flatMap(cell -> cell.bookings().stream()).toList();
        Function<PersonId, String> names = names(bookings);
        Function<Booking, String> words = new StateWords(labTime, now, this::release)::of;
        BookingSettings settings = numbers.inForce();
        boolean books = me.isLabStaff() || me.is(org.standclear.platform.security.Role.STUDENT);
        CellStrips strips =
                new CellStrips(labTime, me.id(), me.isLabStaff(), names, words, settings.slotLength(), books);
        Map<org.standclear.platform.ids.CellId, String> cellNames =
                plan.cells().stream().map(CellDay::cell).collect(Collectors.toMap(Cell::id, Cell::name));
        return new TodayView(
                headline(plan, bookings, cellNames::get, now),
                labTime.day(now),
                labTime.time(now),
                onDuty(now),
                bookings.stream()
                        .filter(booking -> me.isLabStaff() || booking.involves(me.id()))
                        .filter(booking -> waitsNow(booking, now))
                        .sorted(Comparator.comparing(Booking::start))
                        .map(booking -> {
                            String cell = String.valueOf(cellNames.get(booking.cell()));
                            return new TodayView.Waits(
                                    labTime.time(booking.start()) + " " + cell,
                                    names.apply(booking.operator()),
                                    "/bookings/" + booking.id(),
                                    CellStrips.key(booking.state()),
                                    words.apply(booking),
                                    NextStep.of(booking, cell, true, settings, now)
                                            .says());
                        })
                        .toList(),
                plan.cells().stream().map(day -> card(plan, day, strips, now)).toList());
    }

    private Function<PersonId, String> names(List<Booking> bookings) {
        Map<PersonId, Person> known = people.all(bookings.stream()
                .flatMap(
                        booking -> Stream.of(Optional.of(booking.operator()), Optional.ofNullable(booking.attendant())))
                .flatMap(Optional::stream)
                .collect(Collectors.toSet()));
        return id -> known.containsKey(id) ? known.get(id).printedName() : "unknown";
    }

    private Optional<Release> release(Booking booking) {
        return releases.latest(booking.id());
    }

    /** Soon or under way; a run that was not closed out waits also when its slot is over. */
    private static boolean waitsNow(Booking booking, Instant now) {
        BookingState state = booking.state();
        if (state.awaitsCloseOut()) {
            return true;
        }
        return state.ordinal() < BookingState.CLOSED_OUT.ordinal()
                && booking.end().isAfter(now)
                && booking.start().isBefore(now.plus(SOON));
    }

    private TodayView.CellCard card(DayPlan plan, CellDay day, CellStrips strips, Instant now) {
        Cell cell = day.cell();
        return new TodayView.CellCard(
                cell.id().toString(),
                cell.name(),
                cell.state().name().toLowerCase(Locale.ROOT).replace('_', '-'),
                cell.state().words(),
                cell.stateReason(),
                strips.strip(plan, day, now));
    }

    private String onDuty(Instant now) {
        List<Person> staff = roster.onDuty(now);
        return staff.isEmpty()
                ? "Nobody is on duty now, so no run can be released."
                : staff.stream().map(Person::printedName).collect(Collectors.joining(", "));
    }

    private String headline(
            DayPlan plan,
            List<Booking> bookings,
            Function<org.standclear.platform.ids.CellId, String> cellNames,
            Instant now) {
        long running = bookings.stream()
                .filter(booking -> booking.state() == BookingState.RUNNING)
                .count();
        String runs = running == 0 ? "Nothing runs now" : running == 1 ? "1 run now" : running + " runs now";
        return bookings.stream()
                .filter(booking ->
                        booking.state().holdsItsSlot() && booking.start().isAfter(now))
                .min(Comparator.comparing(Booking::start))
                .map(next ->
                        runs + "; next start at " + labTime.time(next.start()) + " on " + cellNames.apply(next.cell()))
                .orElse(plan.hours().closed() ? closed(plan) : runs + "; nothing more is booked today");
    }

    private static String closed(DayPlan plan) {
        String note = plan.hours().note();
        return "The lab is closed today" + (note.isEmpty() ? "" : " (" + note + ")");
    }
}
