package org.standclear.trail.web;

import jakarta.servlet.http.HttpServletResponse;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.Set;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.springframework.http.HttpStatus;
import org.springframework.stereotype.Controller;
import org.springframework.ui.Model;
import org.springframework.web.bind.annotation.GetMapping;
import org.springframework.web.bind.annotation.RequestParam;
import org.standclear.platform.ids.PersonId;
import org.standclear.platform.lab.Lab;
import org.standclear.platform.lab.Labs;
import org.standclear.platform.security.PrintedNames;
import org.standclear.trail.RecordedEntry;
import org.standclear.trail.TrailReader;

/** Shows the record, latest entry first. */
@Controller
class RecordPage {

    private static final int ENTRIES = 50;

    private final TrailReader reader;
    private final Labs labs;
    private final PrintedNames names;

    RecordPage(TrailReader reader, Labs labs, PrintedNames names) {
        this.reader = reader;
        this.labs = labs;
        this.names = names;
    }

    @GetMapping("/record")
    String show(
            @RequestParam Map<String, String> parameters,
            @RequestParam(defaultValue = "" + Long.MAX_VALUE) long before,
            HttpServletResponse response,
            Model model) {
        RecordFilterForm form = RecordFilterForm.of(parameters);
        Map<String, String> errors = form.errors();
        Lab lab = labs.theLab();
        if (!errors.isEmpty()) {
            response.setStatus(HttpStatus.UNPROCESSABLE_CONTENT.value());
        }
        // one more than is shown tells whether there is an older page
        List<RecordedEntry> found =
                errors.isEmpty() ? reader.latest(form.filter(lab.id(), lab.zone()), before, ENTRIES + 1) : List.of();
        model.addAttribute("form", form);
        model.addAttribute("errors", errors);
        List<PersonId> actors = reader.actors(lab.id());
        PrintedNames known = names.knowing(people(actors, found, form));
        model.addAttribute("choices", FilterChoices.of(reader.kinds(lab.id()), actors, known, form));
        model.addAttribute(
                "entries",
                found.stream()
                        .limit(ENTRIES)
                        .map(entry -> EntryView.of(entry, known))
                        .toList());
        model.addAttribute("isFirstPage", before == Long.MAX_VALUE);
        addAddresses(form, found, model);
        return "record/entries";
    }

    /** Everybody whom the page names. */
    private static Set<PersonId> people(List<PersonId> actors, List<RecordedEntry> found, RecordFilterForm form) {
        return Stream.of(actors.stream(), found.stream().map(RecordedEntry::actor), Stream.of(form.personId()))
                .flatMap(people -> people)
                .filter(Objects::nonNull)
                .collect(Collectors.toSet());
    }

    private static void addAddresses(RecordFilterForm form, List<RecordedEntry> found, Model model) {
        model.addAttribute("latest", form.address("/record"));
        model.addAttribute("csv", form.address("/record/entries.csv"));
        model.addAttribute("jsonLines", form.address("/record/entries.jsonl"));
        model.addAttribute(
                "older",
                found.size() > ENTRIES ? form.older(found.get(ENTRIES - 1).sequence()) : null);
    }
}
