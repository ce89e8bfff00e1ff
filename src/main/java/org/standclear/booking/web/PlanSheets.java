package org.standclear.booking.web;

import java.time.Duration;
import java.time.Instant;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.TreeMap;
import java.util.UUID;
import java.util.stream.Collectors;
import org.springframework.stereotype.Component;
import org.springframework.ui.Model;
import org.standclear.booking.allocation.LongWatch;
import org.standclear.booking.allocation.PlannedTurn;
import org.standclear.booking.allocation.Plans;
import org.standclear.booking.allocation.Search;
import org.standclear.booking.allocation.Searches;
import org.standclear.booking.allocation.Window;
import org.standclear.booking.allocation.WindowClosing;
import org.standclear.booking.allocation.Windows;
import org.standclear.cell.Cell;
import org.standclear.cell.Cells;
import org.standclear.core.allocation.Level;
import org.standclear.people.People;
import org.standclear.people.Person;
import org.standclear.platform.ids.CellId;
import org.standclear.platform.ids.PersonId;
import org.standclear.platform.strip.Strip;
import org.standclear.platform.strip.StripBlock;
import org.standclear.platform.strip.StripScale;
import org.standclear.platform.time.LabTime;

/** A search's page: how far it is; then the plan as strips, who is left out and why. For instructors only. */
@Component
class PlanSheets {

    private final Windows windows;
    private final WindowClosing closing;
    private final Searches searches;
    private final Plans plans;
    private final Cells cells;
    private final People people;
    private final LabTime labTime;

    PlanSheets(
            Windows windows,
            WindowClosing closing,
            Searches searches,
            Plans plans,
            Cells cells,
            People people,
            LabTime labTime) {
        this.windows = windows;
        this.closing = closing;
        this.searches = searches;
        this.plans = plans;
        this.cells = cells;
        this.people = people;
        this.labTime = labTime;
    }

    /** A level with its value, the least there can be, and what lies between. */
    record LevelLine(String words, String value, String least, String gap) {}

    /** One day of the plan. */
    record DayStrips(String words, List<Strip> strips) {}

    /** Somebody who is left out, and why. */
    record LeftOutLine(String who, String turn, String says) {}

    /** Somebody whom the plan keeps long at the e-stop. */
    record WatchLine(String who, String day, String words) {}

    String page(Search search, Map<String, String> errors, Model model) {
        Window window = windows.find(search.window()).orElseThrow();
        List<PlannedTurn> places = search.state().hasPlan() ? plans.places(search.id()) : List.of();
        List<Plans.LeftOutTurn> leftOut = search.state().hasPlan() ? plans.leftOut(search.id()) : List.of();
        Map<PersonId, Person> named = people.all(java.util.stream.Stream.concat(
                        places.stream()
                                .flatMap(place -> java.util.stream.Stream.of(place.operator(), place.attendant())),
                        leftOut.stream().map(Plans.LeftOutTurn::operator))
                .collect(Collectors.toSet()));
        model.addAttribute("search", search);
        model.addAttribute("window", window);
        model.addAttribute("windowDays", TurnSheets.days(window, labTime));
        model.addAttribute("firstDay", labTime.day(window.firstDay()));
        model.addAttribute("errors", errors);
        model.addAttribute("headline", headline(search, places.size(), leftOut.size()));
        model.addAttribute("mark", TurnSheets.mark(search.state()));
        model.addAttribute("levels", levels(search));
        model.addAttribute("proof", search.standing().isEmpty() ? "" : proof(search));
        model.addAttribute("running", search.state() == Search.State.RUNNING);
        model.addAttribute("stopping", searches.isStopping(search.id()));
        model.addAttribute("took", took(search));
        model.addAttribute("days", days(places, named));
        model.addAttribute(
                "leftOut",
                leftOut.stream()
                        .map(one -> new LeftOutLine(
                                name(named, one.operator()), String.valueOf(one.turn() + 1), one.says()))
                        .toList());
        model.addAttribute(
                "watches",
                LongWatch.in(places, labTime::date).stream()
                        .map(one -> new WatchLine(name(named, one.person()), labTime.day(one.day()), one.words()))
                        .toList());
        model.addAttribute("longRow", LongWatch.MOST_IN_A_ROW);
        model.addAttribute("longDay", LongWatch.MOST_IN_A_DAY.toHours());
        model.addAttribute("isAccepted", isAccepted(window, search.id()));
        model.addAttribute("mayAccept", search.state().hasPlan() && window.isUndecided() && !closing.isBegun(window));
        model.addAttribute("tooLate", search.state().hasPlan() && window.isUndecided() && closing.isBegun(window));
        return "booking/search";
    }

    private static boolean isAccepted(Window window, UUID search) {
        Window.Accepted accepted = window.accepted();
        return accepted != null && accepted.search().equals(search);
    }

    private String headline(Search search, int placed, int leftOut) {
        return switch (search.state()) {
            case RUNNING -> "Searching for the best plan";
            case FAILED -> "The search failed; nothing was booked";
            case LOST -> "The search was lost; nothing was booked";
            case FOUND, STOPPED ->
                placed
                        + (placed == 1 ? " turn has a place, " : " turns have a place, ")
                        + leftOut
                        + (leftOut == 1 ? " is left out" : " are left out")
                        + (search.isProvenBest() ? "; no better plan exists" : "");
        };
    }

    private String took(Search search) {
        Instant end = search.endedAt() == null ? labTime.now() : search.endedAt();
        long seconds = Duration.between(search.begunAt(), end).toSeconds();
        return (search.endedAt() == null ? "for " : "after ") + seconds + " s; search number " + search.seed()
                + ", which is also its seed";
    }

    /** In one sentence how much of the plan is proven. */
    static String proof(Search search) {
        Optional<Level> open = search.firstUnproven();
        if (open.isEmpty()) {
            return "Every line is proven: no better plan exists.";
        }
        Level first = open.get();
        Search.Value value = search.standing().get(first);
        String gap = value == null
                ? "has no bound yet."
                : "may be " + value.gap() + " more than the least possible: " + value.value() + ", at least "
                        + value.least() + ".";
        return (first.ordinal() == 0
                        ? "Nothing is proven best yet: the line "
                        : "Proven best up to “" + Level.values()[first.ordinal() - 1].words() + "”. The line ")
                + "“" + first.words() + "” " + gap;
    }

    static List<LevelLine> levels(Search search) {
        List<LevelLine> lines = new ArrayList<>();
        int open = search.firstUnproven().map(Level::ordinal).orElse(Level.values().length);
        search.standing()
                .forEach((level, value) -> lines.add(new LevelLine(
                        level.words(),
                        String.valueOf(value.value()),
                        String.valueOf(value.least()),
                        gap(level.ordinal() - open, value))));
        return lines;
    }

    /** Below the first line that is not proven a bound only says what is least while the lines above stay as they are. */
    private static String gap(int afterFirstUnproven, Search.Value value) {
        if (value.gap() > 0) {
            return "at most " + value.gap() + " too many"
                    + (afterFirstUnproven > 0 ? ", with the lines above as here" : "");
        }
        return afterFirstUnproven > 0 ? "least, with the lines above as here" : "proven best";
    }

    private List<DayStrips> days(List<PlannedTurn> places, Map<PersonId, Person> named) {
        TreeMap<LocalDate, List<PlannedTurn>> byDay =
                new TreeMap<>(places.stream().collect(Collectors.groupingBy(place -> labTime.date(place.start()))));
        List<DayStrips> days = new ArrayList<>();
        byDay.forEach((day, turns) -> days.add(new DayStrips(labTime.day(day), strips(day, turns, named))));
        return days;
    }

    private List<Strip> strips(LocalDate day, List<PlannedTurn> turns, Map<PersonId, Person> named) {
        Instant from =
                turns.stream().map(PlannedTurn::start).min(Instant::compareTo).orElseThrow();
        Instant until =
                turns.stream().map(PlannedTurn::end).max(Instant::compareTo).orElseThrow();
        StripScale scale = new StripScale(from, until, labTime.zone());
        Map<CellId, List<StripBlock>> blocks = new LinkedHashMap<>();
        for (PlannedTurn turn : turns) {
            blocks.computeIfAbsent(turn.cell(), cell -> new ArrayList<>())
                    .add(new StripBlock(
                            scale.place(turn.start()),
                            scale.width(turn.start(), turn.end()),
                            labTime.times(turn.start(), turn.end()),
                            name(named, turn.operator()),
                            name(named, turn.attendant()),
                            "booked",
                            turn.booking() == null ? "planned" : "booked",
                            turn.booking() == null ? null : "/bookings/" + turn.booking(),
                            false));
        }
        List<Strip> strips = new ArrayList<>();
        for (Cell cell : cells.all()) {
            List<StripBlock> there = blocks.get(cell.id());
            if (there != null) {
                strips.add(new Strip(
                        "p" + day + "-" + cell.id(),
                        cell.name() + ", " + labTime.day(day),
                        scale.hours(),
                        there,
                        null));
            }
        }
        return strips;
    }

    private static String name(Map<PersonId, Person> named, PersonId person) {
        Person found = named.get(person);
        return found == null ? "unknown" : found.printedName();
    }
}
