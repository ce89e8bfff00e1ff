package org.standclear.booking;

import java.time.DayOfWeek;
import java.time.Instant;
import java.time.LocalDate;
import java.time.temporal.TemporalAdjusters;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import java.util.stream.Collectors;
import org.springframework.stereotype.Component;
import org.standclear.booking.BookingRequest.Refusal;
import org.standclear.people.Assignment;
import org.standclear.people.Courses;
import org.standclear.platform.time.LabTime;

/** Few robots, many students: how much one person may hold ahead, in a week and for one assignment. */
@Component
class Quota implements BookingRequest.Rule {

    private final BookingRows rows;
    private final Courses courses;
    private final LabTime labTime;

    Quota(BookingRows rows, Courses courses, LabTime labTime) {
        this.rows = rows;
        this.courses = courses;
        this.labTime = labTime;
    }

    @Override
    public Optional<Refusal> refusal(BookingRequest request) {
        if (request.isOutsideQuota()) {
            return Optional.empty();
        }
        LocalDate monday = mondayOf(request.slot().start());
        Instant weekStart = monday.atStartOfDay(labTime.zone()).toInstant();
        Instant from = weekStart.isBefore(request.now()) ? weekStart : request.now();
        List<Booking> counted = rows
                // a slot that runs now began before now
                .ofOperator(
                        request.wanted().operator(),
                        from.minus(request.settings().slotLength()),
                        request.wanted().assignment())
                .stream()
                .filter(life -> !life.entry().outsideQuota())
                .map(life -> life.bookingAsOf(request.now(), request.settings()))
                .filter(booking ->
                        booking.state() != BookingState.CANCELLED && booking.state() != BookingState.MOVED_BY_STAFF)
                .toList();
        return ahead(request, counted).or(() -> week(request, counted, monday)).or(() -> assignment(request, counted));
    }

    private Optional<Refusal> ahead(BookingRequest request, List<Booking> counted) {
        List<Booking> ahead = counted.stream()
                .filter(booking -> booking.state().holdsItsSlot()
                        && booking.state() != BookingState.CLOSED_OUT
                        && booking.end().isAfter(request.now()))
                .sorted(Comparator.comparing(Booking::end))
                .toList();
        int allowed = request.settings().futurePerPerson();
        if (ahead.size() < allowed) {
            return Optional.empty();
        }
        String when = ahead.isEmpty()
                ? ""
                : " (" + spans(ahead) + "). You can book the next when "
                        + labTime.span(ahead.get(0).start(), ahead.get(0).end())
                        + " is over, or when one is cancelled.";
        return Refusal.of(
                "quota-ahead",
                numberAllowed(allowed, "ahead at a time") + " " + request.youHave() + " " + ahead.size() + when
                        + openToAll(request));
    }

    private Optional<Refusal> week(BookingRequest request, List<Booking> counted, LocalDate monday) {
        List<Booking> week = counted.stream()
                .filter(booking -> mondayOf(booking.start()).equals(monday))
                .toList();
        int allowed = request.settings().weekPerPerson();
        if (week.size() < allowed) {
            return Optional.empty();
        }
        return Refusal.of(
                "quota-week",
                numberAllowed(allowed, "a week") + " " + request.youHave() + " " + week.size() + " in the week of "
                        + labTime.day(monday) + used(week) + ". The count starts anew on "
                        + labTime.day(monday.plusWeeks(1)) + "." + openToAll(request));
    }

    private Optional<Refusal> assignment(BookingRequest request, List<Booking> counted) {
        var assignment = request.wanted().assignment();
        if (assignment == null) {
            return Optional.empty();
        }
        List<Booking> same = counted.stream()
                .filter(booking -> assignment.equals(booking.assignment()))
                .toList();
        int allowed = request.settings().perAssignment();
        if (same.size() < allowed) {
            return Optional.empty();
        }
        String title = courses.assignmentOf(request.wanted().operator(), assignment)
                .map(Assignment::title)
                .orElse("this assignment");
        return Refusal.of(
                "quota-assignment",
                numberAllowed(allowed, "for \"" + title + "\"") + " " + request.youHave() + " " + same.size()
                        + used(same) + ". This count does not start anew; an instructor can raise the number."
                        + openToAll(request));
    }

    private static String numberAllowed(int allowed, String per) {
        return (allowed == 1 ? "1 booking is allowed " : allowed + " bookings are allowed ") + per + ".";
    }

    private static String openToAll(BookingRequest request) {
        return " Free slots that start within " + request.settings().lateReleaseHours()
                + " h are open to all and not counted.";
    }

    private String spans(List<Booking> bookings) {
        return bookings.stream()
                .map(booking -> labTime.span(booking.start(), booking.end()))
                .collect(Collectors.joining(", "));
    }

    private static String used(List<Booking> bookings) {
        long lost = bookings.stream()
                .filter(booking -> !booking.state().holdsItsSlot())
                .count();
        return lost == 0 ? "" : " (" + lost + " of them cancelled late or missed)";
    }

    private LocalDate mondayOf(Instant at) {
        return labTime.date(at).with(TemporalAdjusters.previousOrSame(DayOfWeek.MONDAY));
    }
}
