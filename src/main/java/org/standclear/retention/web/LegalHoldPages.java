package org.standclear.retention.web;

import jakarta.servlet.http.HttpServletResponse;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.UUID;
import org.jspecify.annotations.Nullable;
import org.springframework.http.HttpStatus;
import org.springframework.security.core.annotation.AuthenticationPrincipal;
import org.springframework.stereotype.Controller;
import org.springframework.ui.Model;
import org.springframework.web.bind.annotation.GetMapping;
import org.springframework.web.bind.annotation.ModelAttribute;
import org.springframework.web.bind.annotation.PathVariable;
import org.springframework.web.bind.annotation.PostMapping;
import org.springframework.web.bind.annotation.RequestParam;
import org.standclear.platform.forms.PostOnce;
import org.standclear.platform.security.Role;
import org.standclear.platform.security.SignedInPerson;
import org.standclear.platform.web.NotFoundException;
import org.standclear.retention.HoldTargets;
import org.standclear.retention.LegalHold;
import org.standclear.retention.LegalHold.Target;
import org.standclear.retention.LegalHolds;

/** Legal holds: those that stand, placing one, and lifting one as a second person. */
@Controller
class LegalHoldPages {

    private static final String ADDRESS = "/retention/holds";
    private static final int SHOWN = 200;
    private static final int LIFTED_SHOWN = 50;

    private final LegalHolds holds;
    private final HoldTargets targets;
    private final HoldViews views;
    private final PostOnce once;

    LegalHoldPages(LegalHolds holds, HoldTargets targets, HoldViews views, PostOnce once) {
        this.holds = holds;
        this.targets = targets;
        this.views = views;
        this.once = once;
    }

    @GetMapping(ADDRESS)
    String list(
            @RequestParam(required = false) @Nullable UUID after,
            @AuthenticationPrincipal SignedInPerson me,
            Model model) {
        List<HoldViews.View> standing =
                holds.standing(SHOWN).stream().map(hold -> views.of(hold, me)).toList();
        LegalHold from = after == null ? null : holds.find(after).orElse(null);
        List<LegalHold> found = holds.lifted(from, LIFTED_SHOWN + 1);
        List<LegalHold> past = found.subList(0, Math.min(LIFTED_SHOWN, found.size()));
        model.addAttribute("standing", standing);
        model.addAttribute("past", past.stream().map(hold -> views.of(hold, me)).toList());
        model.addAttribute(
                "next",
                found.size() > LIFTED_SHOWN
                        ? ADDRESS + "?after=" + past.get(LIFTED_SHOWN - 1).id()
                        : null);
        model.addAttribute("mayPlace", me.is(Role.ADMINISTRATOR) || me.is(Role.INSTRUCTOR));
        model.addAttribute("headline", headline(standing.size()));
        return "retention/holds";
    }

    private static String headline(int standing) {
        if (standing >= SHOWN) {
            return "At least " + SHOWN + " legal holds stand; the latest are shown";
        }
        return standing == 0
                ? "Nothing is on legal hold"
                : standing == 1 ? "One legal hold stands" : standing + " legal holds stand";
    }

    @GetMapping(ADDRESS + "/new")
    String form(@ModelAttribute HoldForm form, Model model) {
        return form(form, Map.of(), model);
    }

    private static String form(HoldForm form, Map<String, String> errors, Model model) {
        model.addAttribute("form", form);
        model.addAttribute("abouts", HoldForm.abouts());
        model.addAttribute("kinds", HoldForm.kinds());
        model.addAttribute("errors", errors);
        return "retention/hold-new";
    }

    @PostMapping(ADDRESS)
    String place(
            @ModelAttribute HoldForm form,
            @AuthenticationPrincipal SignedInPerson me,
            HttpServletResponse response,
            Model model) {
        Map<String, String> errors = new LinkedHashMap<>();
        Optional<Target> target = form.read(targets, errors);
        Optional<String> done = target.flatMap(one -> once.run(form.formToken(), () -> {
            holds.place(one, HoldForm.kept(form.reason()), HoldForm.kept(form.authority()), me.id());
            return ADDRESS;
        }));
        if (done.isPresent()) {
            return "redirect:" + done.get();
        }
        response.setStatus(HttpStatus.UNPROCESSABLE_CONTENT.value());
        return form(form, errors, model);
    }

    @GetMapping(ADDRESS + "/{hold}/lift")
    String lifting(@PathVariable UUID hold, @AuthenticationPrincipal SignedInPerson me, Model model) {
        return lifting(found(hold), me, "", Map.of(), model);
    }

    private LegalHold found(UUID hold) {
        return holds.find(hold).filter(LegalHold::stands).orElseThrow(() -> new NotFoundException("legal hold"));
    }

    private String lifting(LegalHold hold, SignedInPerson me, String reason, Map<String, String> errors, Model model) {
        model.addAttribute("hold", views.of(hold, me));
        model.addAttribute("reason", reason);
        model.addAttribute("errors", errors);
        return "retention/hold-lift";
    }

    @PostMapping(ADDRESS + "/{hold}/lift")
    String lift(
            @PathVariable UUID hold,
            @RequestParam(required = false) @Nullable String formToken,
            @RequestParam(defaultValue = "") String reason,
            @AuthenticationPrincipal SignedInPerson me,
            HttpServletResponse response,
            Model model) {
        LegalHold found = holds.find(hold).orElseThrow(() -> new NotFoundException("legal hold"));
        Map<String, String> errors = new LinkedHashMap<>(HoldViews.wrong("reason", reason));
        Optional<String> done = errors.isEmpty()
                ? once.run(formToken, () -> {
                    Optional<String> refused = holds.lift(hold, HoldForm.kept(reason), me.id());
                    refused.ifPresent(says -> errors.put("", says));
                    return refused.isPresent() ? null : ADDRESS;
                })
                : Optional.empty();
        if (done.isPresent()) {
            return "redirect:" + done.get();
        }
        response.setStatus(HttpStatus.UNPROCESSABLE_CONTENT.value());
        return lifting(found, me, reason, errors, model);
    }
}
