package org.standclear.people.web;

import jakarta.servlet.http.HttpServletResponse;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.jspecify.annotations.Nullable;
import org.springframework.http.HttpStatus;
import org.springframework.security.core.annotation.AuthenticationPrincipal;
import org.springframework.stereotype.Controller;
import org.springframework.ui.Model;
import org.springframework.web.bind.annotation.GetMapping;
import org.springframework.web.bind.annotation.PathVariable;
import org.springframework.web.bind.annotation.PostMapping;
import org.springframework.web.bind.annotation.RequestParam;
import org.springframework.web.util.UriComponentsBuilder;
import org.standclear.people.PeopleRegister;
import org.standclear.people.PeopleRegister.NewPerson;
import org.standclear.people.PeopleRegister.Outcome;
import org.standclear.people.PeopleRegister.Password;
import org.standclear.people.accounts.AccountList;
import org.standclear.people.accounts.AccountList.Filter;
import org.standclear.platform.forms.PostOnce;
import org.standclear.platform.ids.PersonId;
import org.standclear.platform.security.SignedInPerson;

/** Who has an account: the list, one person, and adding somebody. */
@Controller
class PeoplePages {

    private static final int PAGE = 25;

    private final AccountList accounts;
    private final PersonPage personPage;
    private final PeopleRegister register;
    private final PostOnce postOnce;

    PeoplePages(AccountList accounts, PersonPage personPage, PeopleRegister register, PostOnce postOnce) {
        this.accounts = accounts;
        this.personPage = personPage;
        this.register = register;
        this.postOnce = postOnce;
    }

    @GetMapping("/people")
    String list(
            @RequestParam(defaultValue = "") String find,
            @RequestParam(defaultValue = "") String role,
            @RequestParam(defaultValue = "") String state,
            @RequestParam(required = false) @Nullable PersonId after,
            Model model) {
        Filter filter = new Filter(find.strip(), RoleChoices.read(role).orElse(null), state.equals("closed"));
        AccountList.Page page = accounts.page(filter, after, PAGE);
        Map<String, String> roles = new LinkedHashMap<>();
        roles.put("", "all roles");
        roles.putAll(RoleChoices.all());
        model.addAttribute("people", page.people().stream().map(PersonView::of).toList());
        model.addAttribute("roles", roles);
        model.addAttribute("filter", filter);
        model.addAttribute("role", role);
        model.addAttribute("first", after == null);
        model.addAttribute("next", page.last() == null ? null : next(find, role, state, page.last()));
        return "people/list";
    }

    private static String next(String find, String role, String state, PersonId last) {
        return UriComponentsBuilder.fromPath("/people")
                .queryParam("find", "{find}")
                .queryParam("role", "{role}")
                .queryParam("state", "{state}")
                .queryParam("after", last)
                .encode()
                .buildAndExpand(find, role, state)
                .toUriString();
    }

    @GetMapping("/people/new")
    String form(Model model) {
        return newPerson(new Typed(Map.of()), List.of("STUDENT"), model);
    }

    @PostMapping("/people")
    String add(
            @RequestParam Map<String, String> values,
            @RequestParam(required = false) @Nullable List<String> roles,
            @AuthenticationPrincipal SignedInPerson me,
            HttpServletResponse response,
            Model model) {
        Typed typed = new Typed(values);
        NewPerson asked = new NewPerson(
                typed.raw("login"),
                typed.raw("printedName"),
                RoleChoices.read(roles),
                new Password.Temporary(typed.raw("password")),
                me.id());
        Optional<String> done = postOnce.run(typed.raw("formToken"), () -> add(asked, typed));
        if (done.isPresent()) {
            return "redirect:" + done.get();
        }
        response.setStatus(HttpStatus.UNPROCESSABLE_CONTENT.value());
        return newPerson(typed, RoleChoices.names(asked.roles()), model);
    }

    private @Nullable String add(NewPerson asked, Typed typed) {
        Outcome outcome = register.add(asked);
        if (outcome instanceof Outcome.Refused refused) {
            typed.refuse(refused.field(), refused.says());
            return null;
        }
        return "/people/" + ((Outcome.Done) outcome).person().id();
    }

    private static String newPerson(Typed typed, List<String> chosen, Model model) {
        model.addAttribute("typed", typed);
        model.addAttribute("errors", typed.errors());
        model.addAttribute("roles", RoleChoices.all());
        model.addAttribute("chosen", chosen);
        return "people/new";
    }

    @GetMapping("/people/{person}")
    String person(@PathVariable PersonId person, @AuthenticationPrincipal SignedInPerson me, Model model) {
        return personPage.show(person, me, Map.of(), model);
    }
}
