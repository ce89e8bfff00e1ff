package org.standclear.incident.web;

import jakarta.servlet.http.HttpServletResponse;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.UUID;
import java.util.function.Supplier;
import org.jspecify.annotations.Nullable;
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
import org.standclear.incident.CorrectiveActions.Position;
import org.standclear.incident.CorrectiveActions.Whose;
import org.standclear.incident.IncidentOutcome;
import org.standclear.platform.forms.PostOnce;
import org.standclear.platform.ids.Id;
import org.standclear.platform.security.SignedInPerson;
import org.standclear.platform.web.FilterFields;
import org.standclear.platform.web.NotFoundException;

/** Corrective actions that are open, mine first; done and looked at again from here. */
@Controller
class ActionPages {

    private static final int PAGE = 20;

    private final CorrectiveActions actions;
    private final ActionViews views;
    private final PostOnce once;

    ActionPages(CorrectiveActions actions, ActionViews views, PostOnce once) {
        this.actions = actions;
        this.views = views;
        this.once = once;
    }

    /** A form of an action as it came in, or the list without one. */
    private record Asked(@Nullable UUID action, IncidentFields fields, Map<String, String> typed, SignedInPerson me) {}

    @GetMapping("/actions")
    String list(@RequestParam Map<String, String> where, @AuthenticationPrincipal SignedInPerson me, Model model) {
        return page(new Asked(null, new IncidentFields(where), where, me), Map.of(), model);
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
        return page(asked, fields.errors(), model);
    }

    private String page(Asked asked, Map<String, String> errors, Model model) {
        SignedInPerson me = asked.me();
        Optional<CorrectiveAction> open = asked.action() == null ? Optional.empty() : actions.find(asked.action());
        CorrectiveActions.Page mine = actions.unsettled(new Whose.Of(me.id()), position(asked, "mine"), PAGE);
        CorrectiveActions.Page others = actions.unsettled(new Whose.Others(me.id()), position(asked, "others"), PAGE);
        CorrectiveActions.Counted counted = actions.counted(me.id());
        model.addAttribute("headline", headline(counted));
        model.addAttribute(
                "mine", views(with(mine, open.filter(one -> one.owner().equals(me.id()))), me));
        model.addAttribute(
                "others", views(with(others, open.filter(one -> !one.owner().equals(me.id()))), me));
        model.addAttribute("nextMine", address("mine", mine.next()));
        model.addAttribute("nextOthers", address("others", others.next()));
        model.addAttribute("open", asked.action() == null ? "" : asked.action().toString());
        model.addAttribute("typed", asked.typed());
        model.addAttribute("errors", errors);
        return "incident/actions";
    }

    private static String headline(CorrectiveActions.Counted counted) {
        int toDo = counted.toDo();
        return (toDo == 0
                        ? "No action of yours is open"
                        : toDo == 1 ? "One action of yours is open" : toDo + " actions of yours are open")
                + (counted.overdue() == 0 ? ", none is overdue." : "; overdue in the lab: " + counted.overdue() + ".");
    }

    /** The part of the list, with the action whose form is open, wherever in the list that is. */
    private static List<CorrectiveAction> with(CorrectiveActions.Page page, Optional<CorrectiveAction> open) {
        List<CorrectiveAction> all = new ArrayList<>(page.actions());
        open.filter(one -> !one.isSettled())
                .filter(one -> all.stream().noneMatch(known -> known.id().equals(one.id())))
                .ifPresent(one -> all.add(0, one));
        return all;
    }

    private List<ActionViews.ActionView> views(List<CorrectiveAction> all, SignedInPerson me) {
        return all.stream().map(action -> views.of(action, me)).toList();
    }

    /** Where the list goes on; its top when that cannot be read. */
    private static @Nullable Position position(Asked asked, String list) {
        return FilterFields.place(
                asked.typed().getOrDefault(list, ""), (on, id) -> new Position(LocalDate.parse(on), Id.parse(id)));
    }

    private static @Nullable String address(String list, @Nullable Position next) {
        return next == null ? null : "/actions?" + list + "=" + next.on() + "_" + next.action();
    }
}
