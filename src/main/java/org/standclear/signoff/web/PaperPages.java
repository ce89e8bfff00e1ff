package org.standclear.signoff.web;

import jakarta.servlet.http.HttpServletResponse;
import java.time.Clock;
import java.time.Duration;
import java.time.Instant;
import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.concurrent.atomic.AtomicReference;
import java.util.stream.Stream;
import org.jspecify.annotations.Nullable;
import org.springframework.http.HttpStatus;
import org.springframework.security.core.annotation.AuthenticationPrincipal;
import org.springframework.stereotype.Controller;
import org.springframework.ui.Model;
import org.springframework.web.bind.annotation.GetMapping;
import org.springframework.web.bind.annotation.ModelAttribute;
import org.springframework.web.bind.annotation.PathVariable;
import org.springframework.web.bind.annotation.PostMapping;
import org.standclear.booking.Booking;
import org.standclear.cell.Cell;
import org.standclear.cell.Cells;
import org.standclear.people.People;
import org.standclear.people.Person;
import org.standclear.platform.forms.PostOnce;
import org.standclear.platform.ids.CellId;
import org.standclear.platform.ids.PersonId;
import org.standclear.platform.security.Role;
import org.standclear.platform.security.SignedInPerson;
import org.standclear.platform.time.LabTime;
import org.standclear.platform.time.SqlTime;
import org.standclear.platform.web.NotFoundException;
import org.standclear.signoff.PaperCards;
import org.standclear.signoff.PaperCards.PaperCard;
import org.standclear.signoff.PaperCards.Typed;

/** The card to print for when the program cannot be reached, and the page that types one in afterwards. */
@Controller
class PaperPages {

    private static final int SHOWN = 20;
    /** How far back the list of bookings reaches; an older card is typed in without one. */
    private static final Duration BOOKINGS_BACK = Duration.ofDays(30);

    private final Cells cells;
    private final People people;
    private final PaperCards cards;
    private final PostOnce once;
    private final LabTime labTime;
    private final Clock clock;

    PaperPages(Cells cells, People people, PaperCards cards, PostOnce once, LabTime labTime, Clock clock) {
        this.cells = cells;
        this.people = people;
        this.cards = cards;
        this.once = once;
        this.labTime = labTime;
        this.clock = clock;
    }

    /** A card in the list. */
    record Line(String when, String cell, String people, String program, String read, String happened, String typed) {}

    @GetMapping("/cells/{cell}/card")
    String card(@PathVariable CellId cell, Model model) {
        Cell found = found(cell);
        model.addAttribute("cell", found);
        model.addAttribute("tool", cells.current(cell).fittedTool());
        return "signoff/card";
    }

    @GetMapping("/cells/{cell}/paper")
    String form(@PathVariable CellId cell, Model model) {
        return page(found(cell), PaperForm.empty(), Map.of(), model);
    }

    @PostMapping("/cells/{cell}/paper")
    String type(
            @PathVariable CellId cell,
            @ModelAttribute PaperForm form,
            @AuthenticationPrincipal SignedInPerson me,
            HttpServletResponse response,
            Model model) {
        Cell found = found(cell);
        Map<String, String> errors = new LinkedHashMap<>();
        Instant now = SqlTime.stored(clock.instant());
        Optional<PaperCard> card = form.read(cell, labTime.zone(), me.id(), now, errors);
        if (card.isPresent()) {
            AtomicReference<Typed.@Nullable Refused> refused = new AtomicReference<>();
            Optional<String> next = once.run(form.formToken(), () -> {
                if (cards.type(card.get()) instanceof Typed.Refused no) {
                    refused.set(no);
                    return null;
                }
                return "/cells/" + cell + "/paper";
            });
            if (next.isPresent()) {
                return "redirect:" + next.get();
            }
            Typed.Refused no = refused.get();
            errors.put(no == null ? "" : no.field(), no == null ? "Send it again." : no.says());
        }
        response.setStatus(HttpStatus.UNPROCESSABLE_CONTENT.value());
        return page(found, form, errors, model);
    }

    private String page(Cell cell, PaperForm form, Map<String, String> errors, Model model) {
        List<Line> lines = lines(cards.latest(SHOWN));
        model.addAttribute("cell", cell);
        model.addAttribute("bookings", bookings(cell.id()));
        model.addAttribute("everybody", choices(Role.STUDENT, Role.TECHNICIAN, Role.INSTRUCTOR));
        model.addAttribute("staff", choices(Role.TECHNICIAN, Role.INSTRUCTOR));
        model.addAttribute("lines", lines);
        model.addAttribute("form", form);
        model.addAttribute("errors", errors);
        return "signoff/paper";
    }

    private Map<String, String> bookings(CellId cell) {
        Map<String, String> choices = new LinkedHashMap<>();
        choices.put("", "none: nobody had booked it");
        List<Booking> found = cards.bookings(cell, clock.instant().minus(BOOKINGS_BACK));
        Map<PersonId, String> names =
                people.printedNames(found.stream().map(Booking::operator).toList());
        found.forEach(one -> choices.put(
                one.id().toString(),
                labTime.day(one.start()) + ", " + labTime.times(one.start(), one.end())
                        + ", " + names.get(one.operator()) + ", "
                        + one.state().words()));
        return choices;
    }

    private Map<String, String> choices(Role... roles) {
        Map<String, String> choices = new LinkedHashMap<>();
        choices.put("", "Choose");
        for (Role role : roles) {
            for (Person person : people.with(role)) {
                choices.putIfAbsent(person.id().toString(), person.printedName());
            }
        }
        return choices;
    }

    private List<Line> lines(List<PaperCard> shown) {
        Map<CellId, String> cellNames = new HashMap<>();
        cells.all().forEach(cell -> cellNames.put(cell.id(), cell.name()));
        Map<PersonId, String> names = people.printedNames(shown.stream()
                .flatMap(card -> Stream.of(card.operator(), card.attendant(), card.releaser(), card.typedBy()))
                .toList());
        return shown.stream()
                .map(card -> line(card, cellNames.getOrDefault(card.cell(), "unknown"), names))
                .toList();
    }

    private Line line(PaperCard card, String cell, Map<PersonId, String> names) {
        return new Line(
                labTime.full(card.writtenAt()),
                cell,
                names.get(card.operator()) + ", e-stop " + names.get(card.attendant()) + ", released by "
                        + names.get(card.releaser()),
                card.program() + ", fingerprint ending in " + card.fingerprintEnd(),
                card.power() + " power, " + card.overridePercent() + " %, sensitivity " + card.sensitivity() + ", tool "
                        + card.toolCode() + ", passes " + card.passes(),
                card.happened(),
                "typed in late by " + names.get(card.typedBy()) + ", " + labTime.full(card.typedAt()));
    }

    private Cell found(CellId id) {
        return cells.find(id).orElseThrow(() -> new NotFoundException("cell"));
    }
}
