package org.standclear.signoff.records;

import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.UUID;
import org.springframework.stereotype.Component;
import org.standclear.booking.Booking;
import org.standclear.booking.BookingState;
import org.standclear.booking.Bookings;
import org.standclear.cell.Cell;
import org.standclear.cell.CellState;
import org.standclear.cell.CellStops;
import org.standclear.cell.Cells;
import org.standclear.cell.DayTests;
import org.standclear.check.ProgramChecks;
import org.standclear.check.StoredAnswer;
import org.standclear.people.People;
import org.standclear.platform.ids.Id;
import org.standclear.platform.ids.PersonId;
import org.standclear.platform.time.LabTime;
import org.standclear.program.Programs;
import org.standclear.program.Revision;
import org.standclear.signoff.Answers;
import org.standclear.signoff.BenchNumbers;
import org.standclear.signoff.Part;
import org.standclear.signoff.Release;
import org.standclear.signoff.Sheet;
import org.standclear.signoff.SignoffDesk.Statement;
import org.standclear.signoff.SignoffList;
import org.standclear.signoff.rules.Expected;
import org.standclear.signoff.rules.StatementText;

/** Opens the list that is due, and knows what its answers are compared with and what its signatures sign. */
@Component
class Lists {

    private final Bookings bookings;
    private final Cells cells;
    private final DayTests dayTests;
    private final Programs programs;
    private final ProgramChecks checks;
    private final People people;
    private final CellStops stops;
    private final Repeats repeats;
    private final SheetRows sheets;
    private final EventRows events;
    private final WaiverWords waivers;
    private final BenchNumbers numbers;
    private final HandoverRows handovers;
    private final LabTime labTime;

    Lists(
            Bookings bookings,
            Cells cells,
            DayTests dayTests,
            Programs programs,
            ProgramChecks checks,
            People people,
            CellStops stops,
            Repeats repeats,
            SheetRows sheets,
            EventRows events,
            WaiverWords waivers,
            BenchNumbers numbers,
            HandoverRows handovers,
            LabTime labTime) {
        this.bookings = bookings;
        this.cells = cells;
        this.dayTests = dayTests;
        this.programs = programs;
        this.checks = checks;
        this.people = people;
        this.stops = stops;
        this.repeats = repeats;
        this.sheets = sheets;
        this.events = events;
        this.waivers = waivers;
        this.numbers = numbers;
        this.handovers = handovers;
        this.labTime = labTime;
    }

    /** The open list, opened now when it is due; the booking is locked and up to date. */
    Optional<Sheet> due(Booking booking, Cell cell, Instant now) {
        Optional<Sheet> open = sheets.open(booking.id());
        if (open.isPresent()) {
            return open;
        }
        PersonId attendant = booking.attendant();
        if (booking.state() == BookingState.RELEASED) {
            return attendant == null ? Optional.empty() : handover(booking, attendant, now);
        }
        Optional<EventRows.Preparation> check = events.lastCheck(booking.id());
        Optional<SignoffList> list = list(booking, now);
        if (list.isEmpty()
                || attendant == null
                || check.isEmpty()
                || !stops.open(cell.id()).isEmpty()) {
            return Optional.empty();
        }
        Sheet sheet = new Sheet(
                Id.newValue(),
                booking.id(),
                cell.id(),
                sheets.nextRound(booking.id()),
                list.get(),
                list.get() == SignoffList.BENCH && repeats.isUnchanged(booking, cell),
                check.get().revision(),
                cell.currentVersion(),
                check.get().answer(),
                booking.operator(),
                attendant,
                now,
                null,
                List.of());
        sheets.add(sheet);
        return Optional.of(sheet);
    }

    /** A suspended release waits for whoever is named now to sign for the e-stop. */
    private Optional<Sheet> handover(Booking booking, PersonId attendant, Instant now) {
        return handovers
                .suspended(booking.id())
                .filter(release -> !release.attendant().equals(attendant))
                .map(release -> openHandover(release, attendant, now));
    }

    /** Opens the list on which the next attendant signs for the e-stop; booking and cell are locked. */
    Sheet openHandover(Release release, PersonId attendant, Instant now) {
        Sheet sheet = new Sheet(
                Id.newValue(),
                release.booking(),
                release.cell(),
                sheets.nextRound(release.booking()),
                SignoffList.HANDOVER,
                false,
                release.revision(),
                release.cellVersion(),
                sheets.find(release.sheet()).orElseThrow().answer(),
                release.operator(),
                attendant,
                now,
                null,
                List.of());
        sheets.add(sheet);
        return sheet;
    }

    private Optional<SignoffList> list(Booking booking, Instant now) {
        if (!now.isBefore(booking.end())) {
            return Optional.empty();
        }
        if (booking.state() == BookingState.CHECKED
                && !now.isBefore(booking.start().minus(numbers.inForce().sessionOpens()))) {
            return Optional.of(SignoffList.SESSION);
        }
        return booking.state() == BookingState.READY && !now.isBefore(booking.start())
                ? Optional.of(SignoffList.BENCH)
                : Optional.empty();
    }

    Optional<Sheet> find(UUID sheet) {
        return sheets.find(sheet);
    }

    /** Why the round before the open one was refused; empty when it was not. */
    String refusedBefore(Booking booking) {
        List<Sheet> closed =
                sheets.all(booking.id()).stream().filter(sheet -> !sheet.open()).toList();
        Sheet.Closed last =
                closed.isEmpty() ? null : closed.get(closed.size() - 1).closed();
        return last != null && last.outcome() == Sheet.Outcome.REFUSED ? last.because() : "";
    }

    Expected expected(Sheet sheet, Instant now) {
        return new Expected(
                revision(sheet).fingerprintEnd(),
                answer(sheet).bench(),
                cells.current(sheet.cell()).fittedTool(),
                dayTests.passedOn(sheet.cell(), labTime.date(now))
                        .map(test -> test.readings().sensitivity())
                        .orElse(null),
                Map.of(
                        Part.OPERATOR, people.printedName(sheet.operator()),
                        Part.ATTENDANT, people.printedName(sheet.attendant())));
    }

    Statement statement(Sheet sheet, Part part, Answers answers) {
        Booking booking = bookings.find(sheet.booking()).orElseThrow();
        StatementText.Printed printed = new StatementText.Printed(
                cells.find(sheet.cell()).map(Cell::name).orElse("unknown"),
                labTime.full(booking.start()) + " to " + labTime.time(booking.end()),
                people.printedName(sheet.operator()),
                people.printedName(sheet.attendant()),
                asLeft(sheet),
                waivers.words(sheet.booking(), sheet.answer()));
        return StatementText.of(sheet, part, printed, revision(sheet), answer(sheet), answers);
    }

    /** How the cell was left, as the record has it now; the session list is signed under these words. */
    String asLeft(Sheet sheet) {
        List<String> says = new ArrayList<>();
        bookings.awaitingCloseOut(sheet.cell(), sheet.booking())
                .forEach(run -> says.add("the run of " + people.printedName(run.operator()) + ", "
                        + labTime.day(run.start()) + " " + labTime.time(run.start()) + ", is not closed out"));
        Cell cell = cells.find(sheet.cell()).orElseThrow();
        if (cell.state() != CellState.IN_SERVICE) {
            says.add(cell.name() + " is " + cell.state().words() + ": " + cell.stateReason());
        }
        return says.isEmpty() ? "last user closed out, nothing tagged" : String.join("; ", says);
    }

    Revision revision(Sheet sheet) {
        return programs.find(sheet.revision()).orElseThrow();
    }

    StoredAnswer answer(Sheet sheet) {
        return checks.find(sheet.answer()).orElseThrow();
    }
}
