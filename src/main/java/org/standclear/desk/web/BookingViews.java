package org.standclear.desk.web;

import java.time.Clock;
import java.time.Instant;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.Optional;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.jspecify.annotations.Nullable;
import org.springframework.stereotype.Component;
import org.standclear.booking.Booking;
import org.standclear.booking.BookingNumbers;
import org.standclear.booking.BookingState;
import org.standclear.booking.CellStrips;
import org.standclear.cell.Cell;
import org.standclear.cell.Cells;
import org.standclear.check.AnswerBrief;
import org.standclear.check.ProgramChecks;
import org.standclear.people.Assignment;
import org.standclear.people.Course;
import org.standclear.people.Courses;
import org.standclear.people.DueDates;
import org.standclear.people.People;
import org.standclear.people.Person;
import org.standclear.platform.ids.AssignmentId;
import org.standclear.platform.ids.PersonId;
import org.standclear.platform.lab.Labs;
import org.standclear.platform.security.Role;
import org.standclear.platform.security.SignedInPerson;
import org.standclear.platform.time.LabTime;
import org.standclear.program.Programs;
import org.standclear.program.Revision;
import org.standclear.run.Runs;
import org.standclear.signoff.Release;
import org.standclear.signoff.Releases;
import org.standclear.signoff.Waivers;
import org.standclear.trail.RecordedEntry;
import org.standclear.trail.TrailReader;

/** Puts a booking's page together from what the features know. */
@Component
class BookingViews {

    private final Cells cells;
    private final People people;
    private final Courses courses;
    private final DueDates dueDates;
    private final Programs programs;
    private final ProgramChecks checks;
    private final Releases releases;
    private final Waivers waivers;
    private final BookingNumbers numbers;
    private final Runs runs;
    private final TrailReader trail;
    private final Labs labs;
    private final LabTime labTime;
    private final Clock clock;

    BookingViews(
            Cells cells,
            People people,
            Courses courses,
            DueDates dueDates,
            Programs programs,
            ProgramChecks checks,
            Releases releases,
            Waivers waivers,
            BookingNumbers numbers,
            Runs runs,
            TrailReader trail,
            Labs labs,
            LabTime labTime,
            Clock clock) {
        this.cells = cells;
        this.people = people;
        this.courses = courses;
        this.dueDates = dueDates;
        this.programs = programs;
        this.checks = checks;
        this.releases = releases;
        this.waivers = waivers;
        this.numbers = numbers;
        this.runs = runs;
        this.trail = trail;
        this.labs = labs;
        this.labTime = labTime;
        this.clock = clock;
    }

    BookingView of(Booking booking, SignedInPerson me) {
        Instant now = clock.instant();
        String cell = cells.find(booking.cell()).map(Cell::name).orElse("A cell");
        boolean operates = booking.operator().equals(me.id()) || me.isLabStaff();
        boolean early = booking.state() == BookingState.BOOKED || booking.state() == BookingState.CHECKED;
        boolean standing = (early || booking.state() == BookingState.READY)
                && booking.end().isAfter(now);
        BookingView.ProgramLine program = program(booking, me);
        return new BookingView(
                booking.id().toString(),
                cell + ", " + labTime.day(booking.start()) + ", " + labTime.times(booking.start(), booking.end()),
                CellStrips.key(booking.state()),
                new StateWords(labTime, now, this::release).of(booking),
                NextStep.of(booking, cell, operates, numbers.inForce(), now),
                people.printedName(booking.operator()),
                booking.attendant() == null ? "needs one" : people.printedName(booking.attendant()),
                purpose(booking),
                program,
                runs.of(booking.id()).map(run -> "/runs/" + run.id()).orElse(null),
                marks(booking, program),
                history(booking),
                // what has run is finished and closed out, not given up
                operates && standing && runs.of(booking.id()).isEmpty(),
                operates && (standing || booking.state() == BookingState.RELEASED),
                me.id().equals(booking.attendant())
                        && (standing || booking.state() == BookingState.RELEASED)
                        && booking.end().isAfter(now),
                operates && early && booking.end().isAfter(now),
                waives(booking, program, me, now));
    }

    /** An instructor comes from here to the waiver of a program that is not within limits. */
    private @Nullable String waives(
            Booking booking, BookingView.@Nullable ProgramLine program, SignedInPerson me, Instant now) {
        boolean ahead = booking.state().ordinal() <= BookingState.RELEASED.ordinal()
                && booking.end().isAfter(now);
        if (!me.is(Role.INSTRUCTOR) || !ahead || program == null || program.isWithinOrUnknown()) {
            return null;
        }
        return waivers.standing(booking.id()).isPresent() ? "See the waiver" : "Waive for one run";
    }

    private Optional<Release> release(Booking booking) {
        return releases.latest(booking.id());
    }

    private String purpose(Booking booking) {
        AssignmentId assignment = booking.assignment();
        if (assignment != null) {
            // who left the section since still has the booking, and what it is for
            return courses.assignmentOf(booking.operator(), assignment)
                    .map(Assignment::title)
                    .or(() -> dueDates.find(assignment).map(DueDates.DueAssignment::title))
                    .orElse("an assignment");
        }
        return booking.course() == null
                ? "no course"
                : courses.find(booking.course()).map(Course::code).orElse("a course");
    }

    private BookingView.@Nullable ProgramLine program(Booking booking, SignedInPerson me) {
        if (booking.revision() == null) {
            return null;
        }
        Revision revision = programs.find(booking.revision()).orElse(null);
        if (revision == null) {
            return null;
        }
        int length = revision.sha256().length();
        Optional<AnswerBrief> answer = checks.briefFor(revision.id()).stream()
                .filter(one -> one.cell().equals(booking.cell()))
                .findFirst();
        return new BookingView.ProgramLine(
                revision.title() + ", revision " + revision.number(),
                revision.sha256().substring(0, 8) + "…",
                revision.sha256().substring(length - 4),
                answer.map(one -> MyPapers.state(one.verdict())).orElse("waiting"),
                answer.map(one -> one.verdict().words() + " on version " + one.cellVersion())
                        .orElse("not checked on this cell yet"),
                answer.filter(one -> me.isLabStaff() || revision.author().equals(me.id()))
                        .map(one -> "/checks/" + one.id())
                        .orElse(null));
    }

    /** The way of a booking, as far as it has come. */
    private List<BookingView.Mark> marks(Booking booking, BookingView.@Nullable ProgramLine program) {
        if (!booking.state().holdsItsSlot()) {
            return List.of();
        }
        int come = booking.state().ordinal();
        boolean stopped = booking.state() == BookingState.STOPPED;
        return List.of(
                mark("Program named", program != null),
                mark("Within the cell's limits", come >= BookingState.CHECKED.ordinal()),
                mark("E-stop attendant named", booking.attendant() != null),
                mark("Checked in at the cell", booking.checkedInAt() != null),
                mark("Session list signed", come >= BookingState.READY.ordinal()),
                mark("Released", come >= BookingState.RELEASED.ordinal()),
                stopped
                        ? new BookingView.Mark("Run", "stopped", "stopped")
                        : mark("Run", come >= BookingState.FINISHED.ordinal()),
                mark("Closed out", come >= BookingState.CLOSED_OUT.ordinal()));
    }

    private static BookingView.Mark mark(String what, boolean done) {
        return new BookingView.Mark(what, done ? "done" : "open", done ? "done" : "open");
    }

    private List<BookingView.Happened> history(Booking booking) {
        List<RecordedEntry> entries =
                trail.about(labs.theLab().id(), booking.id().toString());
        Map<PersonId, Person> actors = people.all(entries.stream()
                .map(RecordedEntry::actor)
                .filter(Objects::nonNull)
                .collect(Collectors.toSet()));
        Stream<BookingView.Happened> told = entries.stream()
                .map(entry -> new BookingView.Happened(
                        labTime.iso(entry.at()),
                        labTime.day(entry.at()) + " " + labTime.seconds(entry.at()),
                        entry.words(),
                        entry.actor() == null || !actors.containsKey(entry.actor())
                                ? "by itself"
                                : actors.get(entry.actor()).printedName()));
        return told.toList();
    }
}
