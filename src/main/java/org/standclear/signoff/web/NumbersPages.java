package org.standclear.signoff.web;

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
import org.standclear.people.People;
import org.standclear.platform.forms.PostOnce;
import org.standclear.platform.security.Role;
import org.standclear.platform.security.SignedInPerson;
import org.standclear.platform.time.LabTime;
import org.standclear.platform.web.StaleFormException;
import org.standclear.signoff.BenchNumbers;
import org.standclear.signoff.BenchSettings;

/** The numbers of the bench: what holds, since when and why, and the form that changes them. */
@Controller
class NumbersPages {

    private static final int SHOWN = 20;
    private static final String ADDRESS = "/bench-numbers";

    private final BenchNumbers numbers;
    private final People people;
    private final PostOnce once;
    private final LabTime labTime;

    NumbersPages(BenchNumbers numbers, People people, PostOnce once, LabTime labTime) {
        this.numbers = numbers;
        this.people = people;
        this.once = once;
        this.labTime = labTime;
    }

    /** A line of the history. */
    record Changed(String when, String who, String numbers, String reason) {}

    @GetMapping(ADDRESS)
    String show(@AuthenticationPrincipal SignedInPerson me, Model model) {
        return page(NumbersForm.of(numbers.inForce()), Map.of(), me, model);
    }

    @PostMapping(ADDRESS)
    String change(
            @ModelAttribute NumbersForm form,
            @AuthenticationPrincipal SignedInPerson me,
            HttpServletResponse response,
            Model model) {
        Map<String, String> errors = new LinkedHashMap<>();
        Optional<BenchSettings> wanted = form.read(errors);
        if (wanted.isPresent()) {
            Optional<String> done = once.run(form.formToken(), () -> {
                BenchSettings now = numbers.inForce();
                if (!NumbersForm.seen(now).equals(form.seen())) {
                    throw new StaleFormException("The numbers of the bench", ADDRESS, words(wanted.get()), words(now));
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

    private String page(NumbersForm form, Map<String, String> errors, SignedInPerson me, Model model) {
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
        return "signoff/numbers";
    }

    private static String line(BenchSettings one) {
        return words(one).entrySet().stream()
                .map(entry -> entry.getKey() + " " + entry.getValue())
                .collect(Collectors.joining(", "));
    }

    private static Map<String, String> words(BenchSettings one) {
        Map<String, String> words = new LinkedHashMap<>();
        words.put("A release waits", one.releaseHoldsMinutes() + " min");
        words.put("Session list opens", one.sessionOpensMinutes() + " min before");
        words.put("Turn at the e-stop", one.turnMinutes() + " min");
        words.put("Rest", one.restMinutes() + " min");
        words.put("First run", one.firstRunMinutes() + " min");
        words.put("Protective stops that hold the cell", String.valueOf(one.lookAfterStops()));
        return words;
    }
}
