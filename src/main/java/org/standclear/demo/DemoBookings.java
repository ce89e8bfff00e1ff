package org.standclear.demo;

import java.nio.charset.StandardCharsets;
import java.time.Instant;
import java.time.LocalDate;
import java.util.HashMap;
import java.util.Map;
import java.util.stream.Stream;
import org.jspecify.annotations.Nullable;
import org.springframework.context.annotation.Profile;
import org.springframework.stereotype.Component;
import org.standclear.booking.BookingDesk;
import org.standclear.booking.Bookings;
import org.standclear.booking.CellClosure;
import org.standclear.booking.CloseCell;
import org.standclear.booking.MakeBooking;
import org.standclear.booking.Slot;
import org.standclear.booking.SlotCalendar;
import org.standclear.check.StoredAnswer;
import org.standclear.platform.ids.BookingId;
import org.standclear.platform.ids.CellId;
import org.standclear.platform.ids.PersonId;
import org.standclear.platform.ids.RevisionId;
import org.standclear.platform.lab.LabScope;
import org.standclear.program.ProgramUploads;
import org.standclear.program.ProgramUploads.UploadProgram;
import org.standclear.signoff.Preparation;

/** Books, cancels, uploads programs and attaches them, as students and staff of the demo do on their pages. */
@Component
@Profile("demo")
class DemoBookings {

    private final BookingDesk desk;
    private final Bookings bookings;
    private final SlotCalendar calendar;
    private final ProgramUploads uploads;
    private final Preparation preparation;
    private final SeedFiles files = new SeedFiles();
    private final Map<String, RevisionId> uploaded = new HashMap<>();

    DemoBookings(
            BookingDesk desk,
            Bookings bookings,
            SlotCalendar calendar,
            ProgramUploads uploads,
            Preparation preparation) {
        this.desk = desk;
        this.bookings = bookings;
        this.calendar = calendar;
        this.uploads = uploads;
        this.preparation = preparation;
    }

    BookingId book(
            CellId cell, Instant start, PersonId operator, PersonId attendant, Roster.@Nullable Studies studies) {
        var outcome = desk.book(new MakeBooking(
                cell,
                start,
                operator,
                attendant,
                studies == null ? null : studies.course(),
                studies == null ? null : studies.assignment(),
                operator));
        return Expect.that(BookingDesk.Outcome.Booked.class, outcome, "booking " + start)
                .booking()
                .id();
    }

    /** The one from the waiting list names who attends. */
    BookingId withAttendant(BookingId booking, PersonId operator, PersonId attendant) {
        Expect.that(
                Bookings.Transition.Moved.class,
                bookings.nameAttendant(booking, attendant, operator),
                "naming the attendant");
        return booking;
    }

    void cancel(BookingId booking, PersonId by) {
        Expect.that(Bookings.Transition.Moved.class, desk.cancel(booking, by), "cancelling");
    }

    void moveByStaff(BookingId booking, PersonId by, String reason) {
        Expect.that(Bookings.Transition.Moved.class, desk.moveByStaff(booking, by, reason), "moving");
    }

    void checkIn(BookingId booking, PersonId by) {
        Expect.that(Bookings.Transition.Moved.class, bookings.checkIn(booking, by), "check-in");
    }

    void releaseMissed() {
        desk.releaseMissed();
    }

    void close(CellId cell, Instant from, Instant until, CellClosure.Kind kind, String words, PersonId by) {
        Expect.that(
                BookingDesk.Closing.Closed.class,
                desk.close(new CloseCell(cell, from, until, kind, words, by)),
                "keeping a cell: " + words);
    }

    /** All slots of the cell on that day that nothing claims. */
    Stream<Slot> freeSlots(CellId cell, LocalDate day) {
        return calendar.day(day).cells().stream()
                .filter(one -> one.cell().id().equals(cell))
                .flatMap(one -> one.free().stream());
    }

    /** Attaches the operator's own copy of a program of the seed data, uploaded when it is first needed. */
    void attach(BookingId booking, PersonId operator, PersonSeed author, String program) {
        RevisionId revision = uploaded.computeIfAbsent(
                author.login() + " " + program + " " + LabScope.here(),
                own -> upload(operator, author.printedName(), program));
        var attached = Expect.that(
                Preparation.Attached.Kept.class,
                preparation.attach(booking, revision, operator),
                "attaching " + program);
        StoredAnswer answer = attached.prepared().answer();
        if (answer == null || answer.verdict() != StoredAnswer.Verdict.WITHIN) {
            throw new IllegalStateException("the demo's script: " + program + " is not within limits: "
                    + attached.prepared().says());
        }
    }

    private RevisionId upload(PersonId author, String name, String program) {
        String own = files.text("programs/" + program + ".yaml") + "# " + name + "\n";
        var outcome = uploads.upload(
                new UploadProgram(author, null, null, program + ".yaml", own.getBytes(StandardCharsets.UTF_8), null));
        return Expect.that(ProgramUploads.Uploaded.class, outcome, "uploading " + program)
                .revision()
                .id();
    }
}
