package org.standclear.booking;

import java.time.DayOfWeek;
import java.time.Duration;
import java.time.Instant;
import java.time.LocalDate;
import java.time.temporal.TemporalAdjusters;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import java.util.stream.Collectors;
import org.jspecify.annotations.Nullable;
import org.springframework.stereotype.Component;
import org.standclear.booking.BookingDesk.QuotaUse;
import org.standclear.booking.BookingRequest.Refusal;
import org.standclear.people.Assignment;
import org.standclear.people.Courses;
import org.standclear.platform.ids.AssignmentId;
import org.standclear.platform.ids.PersonId;
import org.standclear.platform.time.LabTime;

/** Few robots, many students: how much one person may hold ahead, in a week and for one assignment. */
@Component
class Quota implements BookingRequest.Rule {

    private static final Duration LONGEST_SLOT = Duration.ofHours(4);

    private final BookingRows rows;
    private final NotCounted notCounted;
    private final Courses courses;
    private final LabTime labTime;

    Quota(BookingRows rows, NotCounted notCounted, Courses courses, LabTime labTime) {
        this.rows = rows;
        this.notCounted = notCounted;
        this.courses = courses;
        this.labTime = labTime;
    }

    @Override
    public Optional<Refusal> refusal(BookingRequest request) {
        if (request.isOutsideQuota()) {
            return Optional.empty();
        }
        LocalDate monday = mondayOf(request.slot().start());
        List<Booking> counted = counted(
                request.wanted().operator(), request.wanted().assignment(), monday, request.now(), request.settings());
        return ahead(request, counted).or(() -> week(request, counted, monday)).or(() -> assignment(request, counted));
    }

    /** What somebody has used of the quotas now. */
    QuotaUse use(PersonId operator, Instant now, BookingSettings settings) {
        LocalDate monday = mondayOf(now);
        List<Booking> counted = counted(operator, null, monday, now, settings);
        return new QuotaUse(
                ahead(counted, now).size(),
                settings.futurePerPerson(),
                week(counted, monday).size(),
                settings.weekPerPerson());
    }

    /** The operator's bookings from the Monday or now on, and those for the assignment, that a quota counts. */
    private List<Booking> counted(
            PersonId operator,
            @Nullable AssignmentId assignment,
            LocalDate monday,
            Instant now,
            BookingSettings settings) {
        Instant weekStart = monday.atStartOfDay(labTime.zone()).toInstant();
        Instant from = weekStart.isBefore(now) ? weekStart : now;
        // a slot that runs now began before now
        List<Booking> found = rows.ofOperator(operator, from.minus(LONGEST_SLOT), assignment).stream()
                .filter(life -> !life.entry().outsideQuota())
                .map(life -> life.bookingAsOf(now, settings))
                .filter(booking ->
                        booking.state() != BookingState.CANCELLED && booking.state() != BookingState.MOVED_BY_STAFF)
                .toList();
        return notCounted.leftOut(operator, found);
    }

    private static List<Booking> ahead(List<Booking> counted, Instant now) {
        return counted.stream()
                .filter(booking -> booking.state().holdsItsSlot()
                        && booking.state() != BookingState.CLOSED_OUT
                        && booking.end().isAfter(now))
                .sorted(Comparator.comparing(Booking::end))
                .toList();
    }

    private List<Booking> week(List<Booking> counted, LocalDate monday) {
        return counted.stream()
                .filter(booking -> mondayOf(booking.start()).equals(monday))
                .toList();
    }

    private Optional<Refusal> ahead(BookingRequest request, List<Booking> counted) {
        List<Booking> ahead = ahead(counted, request.now());
        int allowed = request.settings().futurePerPerson();
        if (ahead.size() < allowed) {
            return Optional.empty();
        }
        String when = ahead.isEmpty()
                ? ""
                : " (" + spans(ahead) + "). You can book the next when "
                        + labTime.datedSpan(ahead.get(0).start(), ahead.get(0).end())
                        + " is over, or when one is cancelled.";
        return Refusal.of(
                "quota-ahead",
                numberAllowed(allowed, "ahead at a time") + " " + request.youHave() + " " + ahead.size() + when
                        + openToAll(request));
    }

    private Optional<Refusal> week(BookingRequest request, List<Booking> counted, LocalDate monday) {
        List<Booking> week = week(counted, monday);
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
                .map(booking -> labTime.datedSpan(booking.start(), booking.end()))
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
