package org.standclear.desk.web;

import java.time.Clock;
import java.time.Instant;
import java.util.Comparator;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.stream.Collectors;
import org.springframework.stereotype.Component;
import org.standclear.booking.Booking;
import org.standclear.booking.BookingNumbers;
import org.standclear.booking.BookingSettings;
import org.standclear.booking.BookingState;
import org.standclear.booking.Bookings;
import org.standclear.booking.CellStrips;
import org.standclear.cell.Cell;
import org.standclear.cell.Cells;
import org.standclear.people.Assignment;
import org.standclear.people.Courses;
import org.standclear.people.People;
import org.standclear.platform.ids.CellId;
import org.standclear.platform.security.Role;
import org.standclear.platform.security.SignedInPerson;
import org.standclear.platform.time.LabTime;
import org.standclear.signoff.Release;
import org.standclear.signoff.Releases;

/** Puts a person's own page together. */
@Component
class MyViews {

    private static final int RECORD_SHOWN = 15;
    private static final int RECORD_COUNTED = 200;

    private final Bookings bookings;
    private final BookingNumbers numbers;
    private final Cells cells;
    private final People people;
    private final Courses courses;
    private final MyPapers papers;
    private final EndingAuthorisations ending;
    private final Releases releases;
    private final OwnLabs ownLabs;
    private final LabTime labTime;
    private final Clock clock;

    MyViews(
            Bookings bookings,
            BookingNumbers numbers,
            Cells cells,
            People people,
            Courses courses,
            MyPapers papers,
            EndingAuthorisations ending,
            Releases releases,
            OwnLabs ownLabs,
            LabTime labTime,
            Clock clock) {
        this.bookings = bookings;
        this.numbers = numbers;
        this.cells = cells;
        this.people = people;
        this.courses = courses;
        this.papers = papers;
        this.ending = ending;
        this.releases = releases;
        this.ownLabs = ownLabs;
        this.labTime = labTime;
        this.clock = clock;
    }

    MyView of(SignedInPerson me) {
        Instant now = clock.instant();
        Map<CellId, Cell> known = known();
        List<Booking> over = bookings.recordOf(me.id(), RECORD_COUNTED);
        List<MyView.Ahead> ahead = ownLabs.of(me, note -> ahead(me, note, now)).stream()
                .sorted(Comparator.comparing(MyView.Ahead::start))
                .toList();
        boolean books = me.is(Role.STUDENT) || me.isLabStaff();
        return new MyView(
                headline(ahead, books),
                books,
                papers.authorisedNow(me.id(), now),
                ahead,
                due(me, over),
                papers.programs(me.id()),
                papers.authorisations(me.id(), known, now),
                ending.of(me.id()),
                papers.signsWithPin(me.id()),
                ownLabs.of(me, note -> record(me, note, now)).stream()
                        .sorted(Comparator.comparing(MyView.Past::start).reversed())
                        .limit(RECORD_SHOWN)
                        .toList());
    }

    private String headline(List<MyView.Ahead> ahead, boolean books) {
        if (ahead.isEmpty()) {
            return books ? "You have no booking ahead" : "Your own page";
        }
        MyView.Ahead first = ahead.get(0);
        return (first.finished() ? "Close out: " : "Next: ") + first.cell() + ", " + first.when() + first.whose();
    }

    /** What is ahead in the present lab. */
    private List<MyView.Ahead> ahead(SignedInPerson me, String note, Instant now) {
        Map<CellId, Cell> known = known();
        StateWords words = new StateWords(labTime, now, this::release);
        return bookings.of(me.id(), now).stream()
                .filter(booking -> known.containsKey(booking.cell()) && booking.state() != BookingState.CLOSED_OUT)
                .map(booking -> ahead(booking, me, name(booking, known), note, words, now))
                .toList();
    }

    /** What is over in the present lab. */
    private List<MyView.Past> record(SignedInPerson me, String note, Instant now) {
        Map<CellId, Cell> known = known();
        StateWords words = new StateWords(labTime, now, this::release);
        return bookings.recordOf(me.id(), RECORD_COUNTED).stream()
                .filter(booking -> known.containsKey(booking.cell()))
                .limit(RECORD_SHOWN)
                .map(booking -> new MyView.Past(
                        booking.id().toString(),
                        booking.start(),
                        when(booking) + note,
                        name(booking, known),
                        part(booking, me),
                        CellStrips.key(booking.state()),
                        words.of(booking)))
                .toList();
    }

    private Map<CellId, Cell> known() {
        return cells.all().stream().collect(Collectors.toMap(Cell::id, cell -> cell));
    }

    private MyView.Ahead ahead(
            Booking booking, SignedInPerson me, String cell, String note, StateWords words, Instant now) {
        BookingSettings settings = numbers.inForce();
        boolean operates = booking.operator().equals(me.id());
        String with = operates
                ? booking.attendant() == null ? "needs an attendant" : people.printedName(booking.attendant())
                : people.printedName(booking.operator());
        return new MyView.Ahead(
                booking.id().toString(),
                booking.start(),
                when(booking),
                note,
                cell,
                part(booking, me),
                with,
                CellStrips.key(booking.state()),
                words.of(booking),
                booking.state() == BookingState.FINISHED,
                NextStep.of(booking, cell, operates, settings, now));
    }

    private List<MyView.Due> due(SignedInPerson me, List<Booking> over) {
        return courses.assignmentsOf(me.id()).stream()
                .map(assignment -> due(assignment, over, me))
                .toList();
    }

    private MyView.Due due(Assignment assignment, List<Booking> over, SignedInPerson me) {
        int runs = (int) over.stream()
                .filter(booking -> booking.state() == BookingState.CLOSED_OUT
                        && booking.operator().equals(me.id())
                        && assignment.id().equals(booking.assignment()))
                .count();
        return new MyView.Due(
                assignment.title(),
                labTime.day(assignment.due()) + " " + labTime.time(assignment.due()),
                runs,
                assignment.minimumRuns(),
                runs >= assignment.minimumRuns(),
                runs < assignment.minimumRuns() && assignment.due().isBefore(clock.instant()));
    }

    private Optional<Release> release(Booking booking) {
        return releases.latest(booking.id());
    }

    private String when(Booking booking) {
        return labTime.day(booking.start()) + ", " + labTime.times(booking.start(), booking.end());
    }

    private static String name(Booking booking, Map<CellId, Cell> known) {
        Cell cell = known.get(booking.cell());
        return cell == null ? "A cell" : cell.name();
    }

    private static String part(Booking booking, SignedInPerson me) {
        return booking.operator().equals(me.id()) ? "operator" : "e-stop attendant";
    }
}
