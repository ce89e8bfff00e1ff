package org.standclear.desk.web;

import java.time.Clock;
import java.time.Duration;
import java.time.Instant;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.stream.Collectors;
import org.jspecify.annotations.Nullable;
import org.springframework.stereotype.Controller;
import org.springframework.ui.Model;
import org.springframework.web.bind.annotation.GetMapping;
import org.standclear.booking.Booking;
import org.standclear.booking.BookingState;
import org.standclear.booking.Bookings;
import org.standclear.cell.Cell;
import org.standclear.cell.CellStates;
import org.standclear.cell.CellTag;
import org.standclear.cell.Cells;
import org.standclear.cell.DayTests;
import org.standclear.people.Accommodations;
import org.standclear.people.DutyRoster;
import org.standclear.people.People;
import org.standclear.people.Person;
import org.standclear.platform.ids.PersonId;
import org.standclear.platform.time.LabTime;
import org.standclear.run.Run;
import org.standclear.run.RunState;
import org.standclear.run.Runs;
import org.standclear.signoff.Handovers;
import org.standclear.signoff.LapseWords;
import org.standclear.signoff.Obstacle;
import org.standclear.signoff.Release;
import org.standclear.signoff.Sheet;
import org.standclear.signoff.SignoffDesk;
import org.standclear.signoff.SignoffDesk.Standing;
import org.standclear.signoff.Turn;

/** The technician's desk: what starts next and what it waits for, what is due at the cells, what is not closed out. */
@Controller
class TechnicianDesk {

    /** Starts further away than this are not brought up to date here. */
    private static final Duration NEAR = Duration.ofHours(2);

    private final Cells cells;
    private final CellStates states;
    private final DayTests dayTests;
    private final Bookings bookings;
    private final SignoffDesk desk;
    private final RecheckLists rechecks;
    private final Runs runs;
    private final Handovers handovers;
    private final People people;
    private final DutyRoster duty;
    private final Accommodations accommodations;
    private final LapseWords lapseWords;
    private final LabTime labTime;
    private final Clock clock;

    TechnicianDesk(
            Cells cells,
            CellStates states,
            DayTests dayTests,
            Bookings bookings,
            SignoffDesk desk,
            RecheckLists rechecks,
            Runs runs,
            Handovers handovers,
            People people,
            DutyRoster duty,
            Accommodations accommodations,
            LapseWords lapseWords,
            LabTime labTime,
            Clock clock) {
        this.cells = cells;
        this.states = states;
        this.dayTests = dayTests;
        this.bookings = bookings;
        this.desk = desk;
        this.rechecks = rechecks;
        this.runs = runs;
        this.handovers = handovers;
        this.people = people;
        this.duty = duty;
        this.accommodations = accommodations;
        this.lapseWords = lapseWords;
        this.labTime = labTime;
        this.clock = clock;
    }

    /**
     * A start, and what it waits for.
     *
     * @param outside whether its program's check stands in its way
     */
    record Start(
            Instant at,
            String span,
            String cell,
            String cellId,
            String booking,
            String operator,
            String attendant,
            String state,
            String stateWords,
            boolean outside,
            List<String> waitsFor) {}

    /** A cell that needs something. */
    record Due(String cell, String cellId, String what, String detail, String state) {}

    /**
     * A run that is not closed out.
     *
     * @param swap whether the turn at its e-stop is over while it goes on
     */
    record Open(
            String run,
            String cell,
            String cellId,
            String operator,
            String state,
            String stateWords,
            String since,
            boolean swap) {}

    @GetMapping("/desk")
    String show(Model model) {
        Instant now = clock.instant();
        List<Cell> all = cells.all();
        List<Start> starts = starts(all, now);
        List<Due> tests = dayTests(all, now);
        List<Open> open = runs.open().stream().map(run -> open(run, now)).toList();
        model.addAttribute("headline", DeskHeadline.of(starts, tests, open));
        model.addAttribute("starts", starts);
        model.addAttribute("tests", tests);
        model.addAttribute("noCells", all.isEmpty());
        model.addAttribute("tags", tags(all));
        model.addAttribute("open", open);
        model.addAttribute("rechecks", rechecks.of(all));
        model.addAttribute(
                "duty", duty.onDuty(now).stream().map(Person::printedName).collect(Collectors.joining(", ")));
        return "desk/technician";
    }

    private List<Start> starts(List<Cell> all, Instant now) {
        LocalDate today = labTime.date(now);
        List<Start> starts = new ArrayList<>();
        for (Cell cell : all) {
            bookings.onDay(cell.id(), today).stream()
                    .filter(booking -> booking.state().ordinal() < BookingState.RUNNING.ordinal())
                    .filter(booking -> booking.end().isAfter(now))
                    .map(booking -> start(booking, cell, now))
                    .forEach(starts::add);
        }
        starts.sort(Comparator.comparing(Start::at));
        return starts;
    }

    private Start start(Booking listed, Cell cell, Instant now) {
        boolean near = listed.start().isBefore(now.plus(NEAR));
        Standing standing = near ? desk.look(listed.id()) : null;
        Booking booking = standing == null ? listed : standing.prepared().booking();
        return new Start(
                booking.start(),
                labTime.span(booking.start(), booking.end()),
                cell.name(),
                cell.id().toString(),
                booking.id().toString(),
                operator(booking),
                name(booking.attendant()),
                booking.state().name().toLowerCase(Locale.ROOT).replace('_', '-'),
                booking.state().words(),
                standing != null && isOutside(standing),
                standing == null
                        ? List.of("Waits for its time: " + labTime.time(booking.start()) + ".")
                        : waitsFor(standing, now));
    }

    private static boolean isOutside(Standing standing) {
        return standing.prepared().answer() != null
                && standing.obstacles().stream()
                        .anyMatch(obstacle -> obstacle.code().equals("not-within-limits"));
    }

    /** With what the lab prepares for the person: this page is for those who prepare it. */
    private String operator(Booking booking) {
        String name = people.printedName(booking.operator());
        return accommodations
                .of(booking.operator())
                .map(one -> name + " (" + one.words() + ")")
                .orElse(name);
    }

    private List<String> waitsFor(Standing standing, Instant now) {
        Booking booking = standing.prepared().booking();
        if (booking.state() == BookingState.RELEASED) {
            String suspended = standing.release().map(Release::suspended).orElse(null);
            return suspended == null ? List.of() : List.of("Suspended: " + suspended);
        }
        List<String> waits = new ArrayList<>();
        standing.prepared().lapsed().map(lapseWords::of).ifPresent(waits::add);
        standing.obstacles().stream().map(Obstacle::says).forEach(waits::add);
        standing.sheet()
                .flatMap(Sheet::next)
                .ifPresent(part -> waits.add("The " + part.words() + " signs the "
                        + standing.sheet().get().list().words() + "."));
        if (waits.isEmpty() && booking.start().isAfter(now)) {
            waits.add("Waits for its time: " + labTime.time(booking.start()) + ".");
        }
        return waits;
    }

    /** Why the release of a stopped run no longer holds. */
    private String lapsed(Run run) {
        return desk.look(run.booking())
                .prepared()
                .lapsed()
                .map(lapse -> ". " + lapseWords.of(lapse))
                .orElse("");
    }

    private String name(@Nullable PersonId person) {
        return person == null ? "nobody yet" : people.printedName(person);
    }

    private List<Due> dayTests(List<Cell> all, Instant now) {
        LocalDate today = labTime.date(now);
        return all.stream()
                .filter(cell -> dayTests.passedOn(cell.id(), today).isEmpty())
                .map(cell ->
                        new Due(cell.name(), cell.id().toString(), "Day test due", "gates every release today", "due"))
                .toList();
    }

    private List<Due> tags(List<Cell> all) {
        List<Due> tags = new ArrayList<>();
        for (Cell cell : all) {
            states.tags(cell.id()).stream()
                    .filter(CellTag::hangs)
                    .map(tag -> new Due(
                            cell.name(),
                            cell.id().toString(),
                            tag.kind().words(),
                            tag.reason() + " (" + people.printedName(tag.placedBy()) + ", "
                                    + labTime.full(tag.placedAt()) + ")",
                            tag.kind().state().name().toLowerCase(Locale.ROOT).replace('_', '-')))
                    .forEach(tags::add);
        }
        return tags;
    }

    private Open open(Run run, Instant now) {
        Optional<Booking> booking = bookings.find(run.booking());
        String over = booking.filter(one -> one.end().isBefore(now))
                .map(one -> ", over its slot since " + labTime.lately(one.end()))
                .orElse("");
        Optional<Turn> turn =
                run.state() == RunState.RUNNING ? handovers.turn(run.booking()).filter(Turn::over) : Optional.empty();
        return new Open(
                run.id().toString(),
                cells.find(run.cell()).map(Cell::name).orElse("unknown"),
                run.cell().toString(),
                booking.map(one -> people.printedName(one.operator())).orElse("unknown"),
                run.state().name().toLowerCase(Locale.ROOT).replace('_', '-'),
                run.state().words(),
                labTime.full(run.startedAt())
                        + over
                        + turn.map(one -> "; the e-stop attendant's turn is over since " + labTime.lately(one.until())
                                        + ", swap")
                                .orElse("")
                        + (run.state() == RunState.STOPPED
                                ? "; waits for the cause of the stop, and its reset by staff" + lapsed(run)
                                : ""),
                turn.isPresent());
    }
}
