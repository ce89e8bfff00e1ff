package org.standclear.incident.web;

import jakarta.servlet.http.HttpServletResponse;
import java.util.Map;
import java.util.Optional;
import org.springframework.http.HttpStatus;
import org.springframework.security.core.annotation.AuthenticationPrincipal;
import org.springframework.stereotype.Controller;
import org.springframework.ui.Model;
import org.springframework.web.bind.annotation.GetMapping;
import org.springframework.web.bind.annotation.PathVariable;
import org.springframework.web.bind.annotation.PostMapping;
import org.springframework.web.bind.annotation.RequestParam;
import org.standclear.incident.CorrectiveActions;
import org.standclear.incident.Incident;
import org.standclear.incident.IncidentOutcome;
import org.standclear.incident.IncidentReviews;
import org.standclear.platform.forms.PostOnce;
import org.standclear.platform.ids.IncidentId;
import org.standclear.platform.security.Role;
import org.standclear.platform.security.SignedInPerson;

/** Asks once more what is missing, and closes an incident. */
@Controller
class ClosePages {

    private final IncidentReviews reviews;
    private final CorrectiveActions actions;
    private final IncidentAccess access;
    private final IncidentViews views;
    private final PostOnce once;

    ClosePages(
            IncidentReviews reviews,
            CorrectiveActions actions,
            IncidentAccess access,
            IncidentViews views,
            PostOnce once) {
        this.reviews = reviews;
        this.actions = actions;
        this.access = access;
        this.views = views;
        this.once = once;
    }

    @GetMapping("/incidents/{incident}/close")
    String form(@PathVariable IncidentId incident, @AuthenticationPrincipal SignedInPerson me, Model model) {
        return page(access.visible(incident, me), me, Map.of(), Map.of(), model);
    }

    @PostMapping("/incidents/{incident}/close")
    String close(
            @PathVariable IncidentId incident,
            @RequestParam Map<String, String> typed,
            @AuthenticationPrincipal SignedInPerson me,
            HttpServletResponse response,
            Model model) {
        Incident found = access.visible(incident, me);
        IncidentFields fields = new IncidentFields(typed);
        String learned = fields.lines("learned", 800, "Say what was learned; the reporter reads it.");
        String weak = fields.linesOrNone("whyOnlyWeak", 1000);
        Optional<String> next = fields.fit()
                ? once.run(typed.get("formToken"), () -> {
                    IncidentOutcome outcome =
                            reviews.close(incident, new IncidentReviews.Closing(learned, weak), me.id());
                    if (outcome instanceof IncidentOutcome.Refused refused) {
                        fields.refuse(refused.field(), refused.says());
                        return null;
                    }
                    return "/incidents/" + incident;
                })
                : Optional.empty();
        if (next.isPresent()) {
            return "redirect:" + next.get();
        }
        response.setStatus(HttpStatus.UNPROCESSABLE_CONTENT.value());
        return page(found, me, typed, fields.errors(), model);
    }

    private String page(
            Incident incident, SignedInPerson me, Map<String, String> typed, Map<String, String> errors, Model model) {
        var agreed = actions.of(incident.id());
        boolean onlyWeak = incident.kind().holdsCell()
                && !agreed.isEmpty()
                && agreed.stream().allMatch(action -> action.level().leavesTheHazard());
        model.addAttribute("incidentTitle", views.title(incident));
        model.addAttribute("id", incident.id().toString());
        model.addAttribute("missing", reviews.missing(incident, me.id()));
        model.addAttribute("whyNot", reviews.whyNot(incident, me.id()).orElse(""));
        model.addAttribute("closed", incident.closedAt() != null);
        model.addAttribute("onlyWeak", onlyWeak);
        model.addAttribute("instructor", me.is(Role.INSTRUCTOR));
        model.addAttribute("typed", typed);
        model.addAttribute("errors", errors);
        return "incident/close";
    }
}
