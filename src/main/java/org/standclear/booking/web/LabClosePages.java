package org.standclear.booking.web;

import jakarta.servlet.http.HttpServletResponse;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.stream.Collectors;
import org.jspecify.annotations.Nullable;
import org.springframework.http.HttpMethod;
import org.springframework.http.HttpStatus;
import org.springframework.security.core.annotation.AuthenticationPrincipal;
import org.springframework.stereotype.Component;
import org.springframework.stereotype.Controller;
import org.springframework.ui.Model;
import org.springframework.web.bind.annotation.GetMapping;
import org.springframework.web.bind.annotation.PathVariable;
import org.springframework.web.bind.annotation.PostMapping;
import org.springframework.web.bind.annotation.RequestParam;
import org.standclear.booking.labs.LabRegister;
import org.standclear.booking.labs.LabRegister.Outcome;
import org.standclear.people.People;
import org.standclear.platform.forms.PostOnce;
import org.standclear.platform.ids.LabId;
import org.standclear.platform.lab.Lab;
import org.standclear.platform.lab.Labs;
import org.standclear.platform.lab.LooseEnds.LooseEnd;
import org.standclear.platform.security.Role;
import org.standclear.platform.security.RouteRule;
import org.standclear.platform.security.RouteRules;
import org.standclear.platform.security.SignedInPerson;
import org.standclear.platform.web.NotFoundException;

/** Takes a lab out of use, after asking once more, and into it again. */
@Controller
class LabClosePages {

    private final LabRegister register;
    private final Labs labs;
    private final People people;
    private final PostOnce postOnce;

    LabClosePages(LabRegister register, Labs labs, People people, PostOnce postOnce) {
        this.register = register;
        this.labs = labs;
        this.people = people;
        this.postOnce = postOnce;
    }

    /** Labs are the administrator's. */
    @Component
    static class Rules implements RouteRules {
        @Override
        public List<RouteRule> rules() {
            return List.of(
                    RouteRule.roles(HttpMethod.GET, "/labs", Role.ADMINISTRATOR),
                    RouteRule.roles(HttpMethod.POST, "/labs", Role.ADMINISTRATOR),
                    RouteRule.roles(HttpMethod.GET, "/labs/{lab}", Role.ADMINISTRATOR),
                    RouteRule.roles(HttpMethod.POST, "/labs/{lab}/staff", Role.ADMINISTRATOR),
                    RouteRule.roles(HttpMethod.GET, "/labs/{lab}/close", Role.ADMINISTRATOR),
                    RouteRule.roles(HttpMethod.POST, "/labs/{lab}/close", Role.ADMINISTRATOR),
                    RouteRule.roles(HttpMethod.POST, "/labs/{lab}/open", Role.ADMINISTRATOR));
        }
    }

    /**
     * Something to settle first.
     *
     * @param whom who can settle it, by name
     * @param href its page; empty when the reader may not open it
     */
    record End(String says, List<String> parts, String whom, String href) {}

    /** Whom to ask: an administrator settles little of this. */
    private String whom(LooseEnd end) {
        Map<String, String> can = new LinkedHashMap<>();
        end.actors()
                .forEach(role -> people.with(role)
                        .forEach(person ->
                                can.merge(person.printedName(), role.words(), (one, other) -> one + " and " + other)));
        String roles = end.actors().stream().map(Role::words).collect(Collectors.joining(" or "));
        return can.isEmpty()
                ? "Nobody here is " + roles + ": appoint somebody on the lab’s page."
                : can.entrySet().stream()
                        .map(one -> one.getKey() + " (" + one.getValue() + ")")
                        .collect(Collectors.joining(", ", "Ask ", "."));
    }

    private Lab the(LabId id) {
        return labs.find(id).orElseThrow(() -> new NotFoundException("lab"));
    }

    @GetMapping("/labs/{lab}/close")
    String ask(@PathVariable LabId lab, @AuthenticationPrincipal SignedInPerson me, Model model) {
        return ask(lab, me, "", Map.of(), model);
    }

    @PostMapping("/labs/{lab}/close")
    String close(
            @PathVariable LabId lab,
            @RequestParam(required = false) @Nullable String formToken,
            @RequestParam(defaultValue = "") String reason,
            @AuthenticationPrincipal SignedInPerson me,
            HttpServletResponse response,
            Model model) {
        the(lab);
        Map<String, String> errors = new LinkedHashMap<>();
        Optional<String> done = postOnce.run(formToken, () -> {
            if (register.close(lab, reason, me.id()) instanceof Outcome.Refused refused) {
                errors.put(refused.field(), refused.says());
                return null;
            }
            return "/labs/" + lab;
        });
        if (done.isPresent()) {
            return "redirect:" + done.get();
        }
        response.setStatus(HttpStatus.UNPROCESSABLE_CONTENT.value());
        return ask(lab, me, reason, errors, model);
    }

    private String ask(LabId lab, SignedInPerson me, String reason, Map<String, String> errors, Model model) {
        model.addAttribute("lab", the(lab));
        // the request is for this lab: what the administrator is besides, they are here
        boolean instructor = me.is(Role.INSTRUCTOR);
        model.addAttribute(
                "looseEnds",
                register.looseEnds(lab).stream()
                        .map(end -> new End(
                                end.says(),
                                end.parts(),
                                whom(end),
                                end.forAdministrators() || instructor ? end.href() : ""))
                        .toList());
        model.addAttribute("reason", reason);
        model.addAttribute("errors", errors);
        return "booking/lab-close";
    }

    @PostMapping("/labs/{lab}/open")
    String open(
            @PathVariable LabId lab,
            @RequestParam(required = false) @Nullable String formToken,
            @AuthenticationPrincipal SignedInPerson me) {
        the(lab);
        return "redirect:"
                + postOnce.run(formToken, () -> {
                            register.open(lab, me.id());
                            return "/labs/" + lab;
                        })
                        .orElse("/labs/" + lab);
    }
}
