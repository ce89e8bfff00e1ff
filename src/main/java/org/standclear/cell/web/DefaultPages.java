package org.standclear.cell.web;

import jakarta.servlet.http.HttpServletResponse;
import java.util.LinkedHashMap;
import java.util.Map;
import java.util.Optional;
import org.jspecify.annotations.Nullable;
import org.springframework.http.HttpStatus;
import org.springframework.security.core.annotation.AuthenticationPrincipal;
import org.springframework.stereotype.Controller;
import org.springframework.ui.Model;
import org.springframework.web.bind.annotation.GetMapping;
import org.springframework.web.bind.annotation.ModelAttribute;
import org.springframework.web.bind.annotation.PostMapping;
import org.standclear.cell.DutyDefaults;
import org.standclear.cell.RecurringDuty;
import org.standclear.platform.forms.PostOnce;
import org.standclear.platform.security.Role;
import org.standclear.platform.security.SignedInPerson;

/** How often inspections and reviews come round on new cells. */
@Controller
class DefaultPages {

    private static final String ADDRESS = "/cells/duty-defaults";
    private static final int LONGEST_INTERVAL = 3660;

    private final DutyDefaults defaults;
    private final PostOnce postOnce;

    DefaultPages(DutyDefaults defaults, PostOnce postOnce) {
        this.defaults = defaults;
        this.postOnce = postOnce;
    }

    /** The form as it was sent. */
    record DefaultForm(
            @Nullable String formToken,
            @Nullable String duty,
            @Nullable String days,
            @Nullable String reason) {}

    @GetMapping(ADDRESS)
    String show(@AuthenticationPrincipal SignedInPerson me, Model model) {
        return page(new DefaultForm(null, null, null, null), new FormErrors(), me, model);
    }

    @PostMapping(ADDRESS)
    String change(
            @ModelAttribute DefaultForm form,
            @AuthenticationPrincipal SignedInPerson me,
            HttpServletResponse response,
            Model model) {
        FormErrors errors = new FormErrors();
        Optional<RecurringDuty> duty = RecurringDuty.of(form.duty() == null ? "" : form.duty());
        if (duty.isEmpty()) {
            errors.add("duty", "Choose inspection or risk-assessment review.");
        }
        String typed = form.days() == null ? "" : form.days().strip();
        int days = typed.matches("[0-9]{1,4}") ? Integer.parseInt(typed) : -1;
        if (days < 0 || days > LONGEST_INTERVAL) {
            errors.add("days", "Write a whole number of days from 1 to " + LONGEST_INTERVAL + ", or 0 for none.");
        }
        String reason = TextField.read(errors, "reason", form.reason(), 300, "Say what the interval rests on.");
        if (errors.any()) {
            response.setStatus(HttpStatus.UNPROCESSABLE_CONTENT.value());
            return page(form, errors, me, model);
        }
        return "redirect:"
                + postOnce.run(form.formToken(), () -> {
                            defaults.change(duty.orElseThrow(), days, reason, me.id());
                            return ADDRESS;
                        })
                        .orElse(ADDRESS);
    }

    private String page(DefaultForm form, FormErrors errors, SignedInPerson me, Model model) {
        Map<String, String> choices = new LinkedHashMap<>();
        for (RecurringDuty duty : RecurringDuty.values()) {
            choices.put(duty.code(), duty.words());
        }
        model.addAttribute("inForce", defaults.inForce());
        model.addAttribute("history", defaults.history());
        model.addAttribute("choices", choices);
        model.addAttribute("form", form);
        model.addAttribute("errors", errors.all());
        model.addAttribute("instructor", me.is(Role.INSTRUCTOR));
        return "cell/duty-defaults";
    }
}
