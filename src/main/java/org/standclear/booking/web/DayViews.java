package org.standclear.booking.web;

import java.time.Clock;
import java.time.DateTimeException;
import java.time.Instant;
import java.time.LocalDate;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import org.jspecify.annotations.Nullable;
import org.springframework.stereotype.Component;
import org.standclear.booking.Booking;
import org.standclear.booking.BookingDesk;
import org.standclear.booking.BookingNumbers;
import org.standclear.booking.CellFit;
import org.standclear.booking.CellStrips;
import org.standclear.booking.SharedDays;
import org.standclear.booking.SlotCalendar;
import org.standclear.booking.SlotCalendar.CellDay;
import org.standclear.booking.SlotCalendar.DayPlan;
import org.standclear.booking.web.DayView.DayLink;
import org.standclear.cell.Cells;
import org.standclear.people.Authorisations;
import org.standclear.people.People;
import org.standclear.people.Person;
import org.standclear.platform.ids.PersonId;
import org.standclear.platform.security.Role;
import org.standclear.platform.security.SignedInPerson;
import org.standclear.platform.time.LabTime;

/** Puts a day of the Book page together. */
@Component
class DayViews {

    private final SlotCalendar calendar;
    private final BookingDesk desk;
    private final Authorisations authorisations;
    private final People people;
    private final Cells cells;
    private final CellViews cellViews;
    private final CellFit fit;
    private final SharedDays sharedDays;
    private final BookingNumbers numbers;
    private final LabTime labTime;
    private final Clock clock;

    DayViews(
            SlotCalendar calendar,
            BookingDesk desk,
            Authorisations authorisations,
            People people,
            Cells cells,
            CellViews cellViews,
            CellFit fit,
            SharedDays sharedDays,
            BookingNumbers numbers,
            LabTime labTime,
            Clock clock) {
        this.calendar = calendar;
        this.desk = desk;
        this.authorisations = authorisations;
        this.people = people;
        this.cells = cells;
        this.cellViews = cellViews;
        this.fit = fit;
        this.sharedDays = sharedDays;
        this.numbers = numbers;
        this.labTime = labTime;
        this.clock = clock;
    }

    /** The day asked for, or the first day worth showing with a sentence on what was wrong. */
    DayView of(@Nullable String asked, SignedInPerson me) {
        LocalDate today = labTime.today();
        LocalDate last = calendar.lastDay();
        LocalDate day = today;
        String misread = null;
        if (asked != null && !asked.isBlank()) {
            try {
                day = LocalDate.parse(asked);
                if (day.isBefore(today) || day.isAfter(last)) {
                    misread = "Slots can be booked from " + labTime.day(today) + " until " + labTime.day(last) + "; "
                            + day + " is outside. This is " + labTime.day(today) + ".";
                    day = today;
                }
            } catch (DateTimeException noSuchDay) {
                misread = "There is no such day: \"" + asked + "\". This is " + labTime.day(today) + ".";
            }
        }
        return view(day, today, last, misread, me);
    }

    private DayView view(LocalDate day, LocalDate today, LocalDate last, @Nullable String misread, SignedInPerson me) {
        DayPlan plan = me.isLabStaff() ? calendar.day(day) : calendar.day(day, me.id());
        Instant now = clock.instant();
        Optional<SharedDays.SharedOut> shared = sharedDays.on(day);
        String sharedOut =
                me.isLabStaff() ? "" : shared.map(SharedDays.SharedOut::says).orElse("");
        Map<PersonId, Person> names = people.all(everybodyOn(plan));
        CellStrips strips = new CellStrips(
                labTime,
                me.id(),
                me.isLabStaff(),
                id -> names.containsKey(id) ? names.get(id).printedName() : "unknown",
                booking -> booking.state().words(),
                numbers.inForce().slotLength(),
                true);
        CellViews.Reader reader = new CellViews.Reader(
                me,
                authorisations.of(me.id()),
                me.isLabStaff() ? Map.of() : fit.ownObstacles(me.id()),
                cells.fittedTools(),
                strips,
                plan,
                sharedOut,
                now);
        List<DayView.CellView> cells =
                plan.cells().stream().map(cell -> cellViews.of(cell, reader)).toList();
        return new DayView(
                day.toString(),
                labTime.day(day),
                sharedOut.isEmpty() ? headline(plan, cells) : labTime.day(day) + " is shared out by a plan",
                shared.map(DayViews::shared).orElse(null),
                me.isLabStaff() ? "" : quota(me.id()),
                misread,
                day.isAfter(today) ? link(day.minusDays(1), day) : null,
                day.isBefore(last) ? link(day.plusDays(1), day) : null,
                today.datesUntil(last.plusDays(1)).map(one -> link(one, day)).toList(),
                cells,
                me.isLabStaff(),
                me.is(Role.INSTRUCTOR));
    }

    private static DayView.Shared shared(SharedDays.SharedOut one) {
        return new DayView.Shared(
                one.says(), "/windows/" + one.window(), !one.asks().isEmpty());
    }

    private static Set<PersonId> everybodyOn(DayPlan plan) {
        Set<PersonId> ids = new HashSet<>();
        for (CellDay cell : plan.cells()) {
            for (Booking booking : cell.bookings()) {
                ids.add(booking.operator());
                if (booking.attendant() != null) {
                    ids.add(booking.attendant());
                }
            }
        }
        return ids;
    }

    private String headline(DayPlan plan, List<DayView.CellView> cells) {
        String day = labTime.day(plan.date());
        if (plan.hours().closed()) {
            String note = plan.hours().note();
            return "The lab is closed on " + day + (note.isEmpty() ? "" : " (" + note + ")");
        }
        long free = cells.stream()
                .flatMap(cell -> cell.slots().stream())
                .filter(slot -> slot.state().equals("free"))
                .count();
        return switch ((int) free) {
            case 0 -> "No free slot on " + day;
            case 1 -> "1 free slot on " + day;
            default -> free + " free slots on " + day;
        };
    }

    private String quota(PersonId me) {
        BookingDesk.QuotaUse use = desk.quotaOf(me);
        return "You have " + use.ahead() + " of " + use.aheadAllowed() + " bookings ahead, and have used "
                + use.thisWeek() + " of " + use.weekAllowed() + " this week.";
    }

    private DayLink link(LocalDate to, LocalDate shown) {
        return new DayLink(to.toString(), labTime.day(to), to.equals(shown));
    }
}
