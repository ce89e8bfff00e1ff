package org.standclear.retention.web;

import jakarta.servlet.http.HttpServletResponse;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.jspecify.annotations.Nullable;
import org.springframework.dao.DuplicateKeyException;
import org.springframework.http.HttpStatus;
import org.springframework.security.core.annotation.AuthenticationPrincipal;
import org.springframework.stereotype.Controller;
import org.springframework.ui.Model;
import org.springframework.web.bind.annotation.GetMapping;
import org.springframework.web.bind.annotation.ModelAttribute;
import org.springframework.web.bind.annotation.PostMapping;
import org.standclear.people.People;
import org.standclear.platform.forms.PostOnce;
import org.standclear.platform.security.SignedInPerson;
import org.standclear.platform.time.LabTime;
import org.standclear.platform.web.StaleFormException;
import org.standclear.retention.DisposalWaits;
import org.standclear.retention.DisposalWaits.Wait;

/** How many days an approved list waits, and the form that changes it. */
@Controller
class DisposalWaitPages {

    private static final String ADDRESS = "/retention/wait";
    private static final int SHOWN = 20;

    private final DisposalWaits waits;
    private final DueViews views;
    private final People people;
    private final LabTime labTime;
    private final PostOnce once;

    DisposalWaitPages(DisposalWaits waits, DueViews views, People people, LabTime labTime, PostOnce once) {
        this.waits = waits;
        this.views = views;
        this.people = people;
        this.labTime = labTime;
        this.once = once;
    }

    /** The form as it was sent. */
    record WaitForm(
            @Nullable String formToken,
            @Nullable String seen,
            @Nullable String days,
            @Nullable String reason) {

        int seenNumber() {
            return seen != null && seen.matches("[0-9]{1,6}") ? Integer.parseInt(seen) : -1;
        }

        /** The days; 0 when they cannot be read. */
        int number() {
            String typed = days == null ? "" : days.strip();
            int number = typed.matches("[0-9]{1,3}") ? Integer.parseInt(typed) : 0;
            return number >= DisposalWaits.FEWEST && number <= DisposalWaits.MOST ? number : 0;
        }
    }

    /** A line of the history. */
    record Changed(String when, String who, int days, String reason) {}

    @GetMapping(ADDRESS)
    String show(Model model) {
        Wait wait = waits.inForce();
        int set = wait.shorterLater().map(DisposalWaits.Shorter::days).orElse(wait.days());
        WaitForm form = new WaitForm(null, String.valueOf(wait.number()), String.valueOf(set), "");
        return page(form, Map.of(), model);
    }

    @PostMapping(ADDRESS)
    String change(
            @ModelAttribute WaitForm form,
            @AuthenticationPrincipal SignedInPerson me,
            HttpServletResponse response,
            Model model) {
        Map<String, String> errors = new LinkedHashMap<>();
        if (form.number() == 0) {
            errors.put(
                    "days",
                    "Write a whole number from " + DisposalWaits.FEWEST + " to " + DisposalWaits.MOST + "; \""
                            + (form.days() == null ? "" : form.days().strip()) + "\" is not.");
        }
        errors.putAll(HoldViews.wrong("reason", form.reason() == null ? "" : form.reason()));
        Optional<String> done = errors.isEmpty() ? changed(form, me) : Optional.empty();
        if (done.isPresent()) {
            return "redirect:" + done.get();
        }
        response.setStatus(HttpStatus.UNPROCESSABLE_CONTENT.value());
        return page(form, errors, model);
    }

    private Optional<String> changed(WaitForm form, SignedInPerson me) {
        try {
            return once.run(form.formToken(), () -> {
                if (!waits.change(form.number(), form.seenNumber(), me.id(), HoldForm.kept(form.reason()))) {
                    throw stale(form);
                }
                return ADDRESS;
            });
        } catch (DuplicateKeyException sameMoment) {
            throw stale(form);
        }
    }

    private StaleFormException stale(WaitForm form) {
        return new StaleFormException(
                "how long a list waits",
                ADDRESS,
                Map.of("Days", String.valueOf(form.number())),
                Map.of("Days", views.days(waits.inForce())));
    }

    private String page(WaitForm form, Map<String, String> errors, Model model) {
        List<Changed> changes = waits.changes(SHOWN).stream()
                .map(change -> new Changed(
                        labTime.full(change.at()), people.printedName(change.by()), change.days(), change.reason()))
                .toList();
        model.addAttribute("holds", views.days(waits.inForce()));
        model.addAttribute("standard", DisposalWaits.STANDARD);
        model.addAttribute("form", form);
        model.addAttribute("errors", errors);
        model.addAttribute("changes", changes);
        return "retention/wait";
    }
}
