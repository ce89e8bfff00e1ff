package org.standclear.incident.web;

import jakarta.servlet.http.HttpServletResponse;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.stream.Collectors;
import org.springframework.http.HttpStatus;
import org.springframework.security.core.annotation.AuthenticationPrincipal;
import org.springframework.stereotype.Controller;
import org.springframework.ui.Model;
import org.springframework.web.bind.annotation.GetMapping;
import org.springframework.web.bind.annotation.ModelAttribute;
import org.springframework.web.bind.annotation.PostMapping;
import org.standclear.incident.IncidentNumbers;
import org.standclear.incident.IncidentSettings;
import org.standclear.people.People;
import org.standclear.platform.forms.PostOnce;
import org.standclear.platform.security.Role;
import org.standclear.platform.security.SignedInPerson;
import org.standclear.platform.time.LabTime;
import org.standclear.platform.web.StaleFormException;

/** The numbers of incidents: what holds, since when and why, and the form that changes them. */
@Controller
class IncidentNumbersPages {

    private static final int SHOWN = 20;
    private static final String ADDRESS = "/incident-numbers";

    private final IncidentNumbers numbers;
    private final People people;
    private final PostOnce once;
    private final LabTime labTime;

    IncidentNumbersPages(IncidentNumbers numbers, People people, PostOnce once, LabTime labTime) {
        this.numbers = numbers;
        this.people = people;
        this.once = once;
        this.labTime = labTime;
    }

    /** A line of the history. */
    record Changed(String when, String who, String numbers, String reason) {}

    @GetMapping(ADDRESS)
    String show(@AuthenticationPrincipal SignedInPerson me, Model model) {
        return page(IncidentNumbersForm.of(numbers.inForce()), Map.of(), me, model);
    }

    @PostMapping(ADDRESS)
    String change(
            @ModelAttribute IncidentNumbersForm form,
            @AuthenticationPrincipal SignedInPerson me,
            HttpServletResponse response,
            Model model) {
        Map<String, String> errors = new LinkedHashMap<>();
        Optional<IncidentSettings> wanted = form.read(errors);
        if (wanted.isPresent()) {
            Optional<String> done = once.run(form.formToken(), () -> {
                IncidentSettings now = numbers.inForce();
                if (!IncidentNumbersForm.seen(now).equals(form.seen())) {
                    throw new StaleFormException("The numbers of incidents", ADDRESS, words(wanted.get()), words(now));
                }
                if (now.equals(wanted.get())) {
                    errors.put("", "These are the numbers that hold already; nothing was changed.");
                    return null;
                }
                numbers.change(wanted.get(), me.id(), form.reasonKept());
                return ADDRESS;
            });
            if (done.isPresent()) {
                return "redirect:" + done.get();
            }
        }
        response.setStatus(HttpStatus.UNPROCESSABLE_CONTENT.value());
        return page(form, errors, me, model);
    }

    private String page(IncidentNumbersForm form, Map<String, String> errors, SignedInPerson me, Model model) {
        List<Changed> changes = numbers.changes(SHOWN).stream()
                .map(change -> new Changed(
                        labTime.full(change.at()),
                        people.printedName(change.by()),
                        line(change.settings()),
                        change.reason()))
                .toList();
        model.addAttribute("form", form);
        model.addAttribute("errors", errors);
        model.addAttribute("changes", changes);
        model.addAttribute("mayChange", me.is(Role.INSTRUCTOR));
        model.addAttribute("holding", words(numbers.inForce()));
        return "incident/numbers";
    }

    private static String line(IncidentSettings one) {
        return words(one).entrySet().stream()
                .map(entry -> entry.getKey() + " " + entry.getValue())
                .collect(Collectors.joining(", "));
    }

    private static Map<String, String> words(IncidentSettings one) {
        Map<String, String> words = new LinkedHashMap<>();
        words.put("Form of a contact or of damage", one.contactFormHours() + " h");
        words.put("Form of an injury", one.injuryFormHours() + " h");
        words.put("Look whether an action helped", one.effectCheckDays() + " days after");
        return words;
    }
}
