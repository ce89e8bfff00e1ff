package org.standclear.people.web;

import jakarta.servlet.http.HttpServletResponse;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
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
import org.standclear.people.PeopleRegister;
import org.standclear.people.PeopleRegister.Outcome;
import org.standclear.people.PeopleRegister.Password;
import org.standclear.platform.forms.PostOnce;
import org.standclear.platform.ids.PersonId;
import org.standclear.platform.security.Role;
import org.standclear.platform.security.SignedInPerson;
import org.standclear.platform.web.StaleFormException;

/** What the administrator does to an account: roles, a temporary password, closing it and opening it again. */
@Controller
class AccountPages {

    private final PersonPage personPage;
    private final PeopleRegister register;
    private final PostOnce postOnce;

    AccountPages(PersonPage personPage, PeopleRegister register, PostOnce postOnce) {
        this.personPage = personPage;
        this.register = register;
        this.postOnce = postOnce;
    }

    @PostMapping("/people/{person}/roles")
    String roles(
            @PathVariable PersonId person,
            @RequestParam Map<String, String> values,
            @RequestParam(required = false) @Nullable List<String> roles,
            @AuthenticationPrincipal SignedInPerson me,
            HttpServletResponse response,
            Model model) {
        personPage.account(person);
        Typed typed = new Typed(values);
        Integer seen = typed.whole("version");
        Set<Role> asked = RoleChoices.read(roles);
        Optional<String> done =
                run(typed, person, asked, () -> register.setRoles(person, asked, seen == null ? 0 : seen, me.id()));
        return done.orElseGet(() -> personPage.again(person, me, typed, response, model));
    }

    @PostMapping("/people/{person}/password")
    String password(
            @PathVariable PersonId person,
            @RequestParam Map<String, String> values,
            @AuthenticationPrincipal SignedInPerson me,
            HttpServletResponse response,
            Model model) {
        personPage.account(person);
        Typed typed = new Typed(values);
        if (person.equals(me.id())) {
            typed.refuse("password", "Change your own password on your own page; this is for others.");
            return personPage.again(person, me, typed, response, model);
        }
        Password given = new Password.Temporary(typed.raw("password"));
        return run(typed, person, Set.of(), () -> register.setPassword(person, given, me.id()))
                .orElseGet(() -> personPage.again(person, me, typed, response, model));
    }

    @GetMapping("/people/{person}/close")
    String closing(@PathVariable PersonId person, Model model) {
        return closing(person, new Typed(Map.of()), model);
    }

    @PostMapping("/people/{person}/close")
    String close(
            @PathVariable PersonId person,
            @RequestParam Map<String, String> values,
            @AuthenticationPrincipal SignedInPerson me,
            HttpServletResponse response,
            Model model) {
        personPage.account(person);
        Typed typed = new Typed(values);
        Optional<String> done =
                run(typed, person, Set.of(), () -> register.deactivate(person, typed.raw("reason"), me.id()));
        if (done.isEmpty()) {
            response.setStatus(HttpStatus.UNPROCESSABLE_CONTENT.value());
        }
        return done.orElseGet(() -> closing(person, typed, model));
    }

    @PostMapping("/people/{person}/open")
    String open(
            @PathVariable PersonId person,
            @RequestParam Map<String, String> values,
            @AuthenticationPrincipal SignedInPerson me,
            HttpServletResponse response,
            Model model) {
        personPage.account(person);
        Typed typed = new Typed(values);
        return run(typed, person, Set.of(), () -> register.activate(person, typed.raw("reason"), me.id()))
                .orElseGet(() -> personPage.again(person, me, typed, response, model));
    }

    private Optional<String> run(Typed typed, PersonId person, Set<Role> asked, Supplier<Outcome> act) {
        return postOnce.run(typed.raw("formToken"), () -> {
                    Outcome outcome = act.get();
                    if (outcome instanceof Outcome.Stale stale) {
                        throw new StaleFormException(
                                "the account of " + stale.current().printedName(),
                                "/people/" + person,
                                Map.of("Roles", RoleChoices.words(asked)),
                                Map.of(
                                        "Roles",
                                        RoleChoices.words(stale.current().roles())));
                    }
                    if (outcome instanceof Outcome.Refused refused) {
                        typed.refuse(refused.field(), refused.says());
                        return null;
                    }
                    return "/people/" + person;
                })
                .map(location -> "redirect:" + location);
    }

    private String closing(PersonId person, Typed typed, Model model) {
        model.addAttribute("person", PersonView.of(personPage.account(person).person()));
        model.addAttribute("typed", typed);
        model.addAttribute("errors", typed.errors());
        return "people/close";
    }
}
