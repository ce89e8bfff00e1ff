package org.standclear.incident.web;

import jakarta.servlet.http.HttpServletResponse;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.UUID;
import java.util.function.Supplier;
import org.springframework.http.HttpStatus;
import org.springframework.security.core.annotation.AuthenticationPrincipal;
import org.springframework.stereotype.Controller;
import org.springframework.ui.Model;
import org.springframework.web.bind.annotation.GetMapping;
import org.springframework.web.bind.annotation.PathVariable;
import org.springframework.web.bind.annotation.PostMapping;
import org.springframework.web.bind.annotation.RequestParam;
import org.standclear.incident.CorrectiveAction;
import org.standclear.incident.CorrectiveActions;
import org.standclear.incident.IncidentOutcome;
import org.standclear.platform.forms.PostOnce;
import org.standclear.platform.security.SignedInPerson;
import org.standclear.platform.time.LabTime;
import org.standclear.platform.web.NotFoundException;

/** Corrective actions that are open, mine first; done and looked at again from here. */
@Controller
class ActionPages {

    private final CorrectiveActions actions;
    private final ActionViews views;
    private final LabTime labTime;
    private final PostOnce once;

    ActionPages(CorrectiveActions actions, ActionViews views, LabTime labTime, PostOnce once) {
        this.actions = actions;
        this.views = views;
        this.labTime = labTime;
        this.once = once;
    }

    /** A form of an action as it came in. */
    private record Asked(UUID action, IncidentFields fields, Map<String, String> typed, SignedInPerson me) {}

    @GetMapping("/actions")
    String list(@AuthenticationPrincipal SignedInPerson me, Model model) {
        return page(me, "", Map.of(), Map.of(), model);
    }

    @PostMapping("/actions/{action}/done")
    String done(
            @PathVariable UUID action,
            @RequestParam Map<String, String> typed,
            @AuthenticationPrincipal SignedInPerson me,
            HttpServletResponse response,
            Model model) {
        known(action);
        IncidentFields fields = new IncidentFields(typed);
        String words = fields.line("words", 800, "Say what was done.");
        return act(new Asked(action, fields, typed, me), () -> actions.done(action, words, me.id()), response, model);
    }

    @PostMapping("/actions/{action}/check")
    String check(
            @PathVariable UUID action,
            @RequestParam Map<String, String> typed,
            @AuthenticationPrincipal SignedInPerson me,
            HttpServletResponse response,
            Model model) {
        known(action);
        IncidentFields fields = new IncidentFields(typed);
        Optional<Boolean> helped = fields.choice(
                "helped",
                value -> "yes".equals(value)
                        ? Optional.of(true)
                        : "no".equals(value) ? Optional.of(false) : Optional.empty(),
                "Say whether it helped.");
        String words = fields.line("words", 800, "Say what you looked at.");
        return act(
                new Asked(action, fields, typed, me),
                () -> actions.check(action, helped.get(), words, me.id()),
                response,
                model);
    }

    private void known(UUID action) {
        if (actions.find(action).isEmpty()) {
            throw new NotFoundException("action");
        }
    }

    private String act(Asked asked, Supplier<IncidentOutcome> act, HttpServletResponse response, Model model) {
        IncidentFields fields = asked.fields();
        Optional<String> next = fields.fit()
                ? once.run(asked.typed().get("formToken"), () -> {
                    if (act.get() instanceof IncidentOutcome.Refused refused) {
                        fields.refuse(refused.field(), refused.says());
                        return null;
                    }
                    return "/actions";
                })
                : Optional.empty();
        if (next.isPresent()) {
            return "redirect:" + next.get();
        }
        response.setStatus(HttpStatus.UNPROCESSABLE_CONTENT.value());
        return page(asked.me(), asked.action().toString(), asked.typed(), fields.errors(), model);
    }

    private String page(
            SignedInPerson me, String open, Map<String, String> typed, Map<String, String> errors, Model model) {
        List<CorrectiveAction> all = actions.unsettled(null);
        List<CorrectiveAction> mine =
                all.stream().filter(action -> action.owner().equals(me.id())).toList();
        long toDo = mine.stream().filter(action -> action.done() == null).count();
        long overdue =
                all.stream().filter(action -> action.isOverdue(labTime.today())).count();
        model.addAttribute(
                "headline",
                (toDo == 0
                                ? "No action of yours is open"
                                : toDo == 1 ? "One action of yours is open" : toDo + " actions of yours are open")
                        + (overdue == 0 ? ", none is overdue." : "; overdue in the lab: " + overdue + "."));
        model.addAttribute(
                "mine", mine.stream().map(action -> views.of(action, me)).toList());
        model.addAttribute(
                "others",
                all.stream()
                        .filter(action -> !action.owner().equals(me.id()))
                        .map(action -> views.of(action, me))
                        .toList());
        model.addAttribute("open", open);
        model.addAttribute("typed", typed);
        model.addAttribute("errors", errors);
        return "incident/actions";
    }
}
