package org.standclear.people.web;

import jakarta.servlet.http.HttpServletResponse;
import java.util.LinkedHashMap;
import java.util.Map;
import java.util.Optional;
import java.util.UUID;
import org.jspecify.annotations.Nullable;
import org.springframework.http.HttpStatus;
import org.springframework.security.core.annotation.AuthenticationPrincipal;
import org.springframework.stereotype.Controller;
import org.springframework.ui.Model;
import org.springframework.web.bind.annotation.GetMapping;
import org.springframework.web.bind.annotation.PathVariable;
import org.springframework.web.bind.annotation.PostMapping;
import org.springframework.web.bind.annotation.RequestParam;
import org.standclear.people.AuthorisationRegister;
import org.standclear.people.AuthorisationRegister.Grant;
import org.standclear.people.AuthorisationRegister.Granted;
import org.standclear.people.AuthorisationRegister.Outcome;
import org.standclear.people.Duty;
import org.standclear.people.Person;
import org.standclear.platform.forms.PostOnce;
import org.standclear.platform.ids.PersonId;
import org.standclear.platform.lab.CellNames;
import org.standclear.platform.security.SignedInPerson;
import org.standclear.platform.time.LabTime;
import org.standclear.platform.web.NotFoundException;

/** Granting an authorisation to one person, and revoking one. */
@Controller
class AuthorisationPages {

    private final PersonPage personPage;
    private final AuthorisationRegister register;
    private final GrantForm form;
    private final CellNames cells;
    private final LabTime labTime;
    private final PostOnce postOnce;

    AuthorisationPages(
            PersonPage personPage,
            AuthorisationRegister register,
            GrantForm form,
            CellNames cells,
            LabTime labTime,
            PostOnce postOnce) {
        this.personPage = personPage;
        this.register = register;
        this.form = form;
        this.cells = cells;
        this.labTime = labTime;
        this.postOnce = postOnce;
    }

    @GetMapping("/people/{person}/authorisations")
    String granting(@PathVariable PersonId person, Model model) {
        return granting(person, new Typed(form.plain()), model);
    }

    @PostMapping("/people/{person}/authorisations")
    String grant(
            @PathVariable PersonId person,
            @RequestParam Map<String, String> values,
            @AuthenticationPrincipal SignedInPerson me,
            HttpServletResponse response,
            Model model) {
        personPage.account(person);
        Typed typed = new Typed(values);
        Optional<Grant> asked = form.read(typed, person, me.id());
        Optional<String> done = asked.isEmpty()
                ? Optional.empty()
                : postOnce.run(typed.raw("formToken"), () -> location(register.grant(asked.get()), typed, person));
        if (done.isPresent()) {
            return "redirect:" + done.get();
        }
        response.setStatus(HttpStatus.UNPROCESSABLE_CONTENT.value());
        return granting(person, typed, model);
    }

    private static @Nullable String location(Outcome outcome, Typed typed, PersonId person) {
        if (outcome instanceof Outcome.Refused refused) {
            typed.refuse(refused.field(), refused.says());
            return null;
        }
        return "/people/" + person;
    }

    private String granting(PersonId id, Typed typed, Model model) {
        Person person = personPage.account(id).person();
        Map<String, String> duties = new LinkedHashMap<>();
        for (Duty duty : Duty.values()) {
            duties.put(duty.name(), duty.words());
        }
        Map<String, String> choices = new LinkedHashMap<>();
        choices.put("", "every cell");
        cells.all().forEach((cell, name) -> choices.put(cell.toString(), name));
        model.addAttribute("person", PersonView.of(person));
        model.addAttribute("typed", typed);
        model.addAttribute("errors", typed.errors());
        model.addAttribute("duties", duties);
        model.addAttribute("cells", choices);
        return "people/grant";
    }

    @GetMapping("/people/{person}/authorisations/{authorisation}/revoke")
    String revoking(@PathVariable PersonId person, @PathVariable UUID authorisation, Model model) {
        return revoking(person, granted(person, authorisation), new Typed(Map.of()), model);
    }

    @PostMapping("/people/{person}/authorisations/{authorisation}/revoke")
    String revoke(
            @PathVariable PersonId person,
            @PathVariable UUID authorisation,
            @RequestParam Map<String, String> values,
            @AuthenticationPrincipal SignedInPerson me,
            HttpServletResponse response,
            Model model) {
        Granted granted = granted(person, authorisation);
        Typed typed = new Typed(values);
        Optional<String> done = postOnce.run(
                typed.raw("formToken"),
                () -> location(register.revoke(authorisation, typed.raw("reason"), me.id()), typed, person));
        if (done.isPresent()) {
            return "redirect:" + done.get();
        }
        response.setStatus(HttpStatus.UNPROCESSABLE_CONTENT.value());
        return revoking(person, granted, typed, model);
    }

    private Granted granted(PersonId person, UUID authorisation) {
        return register.find(authorisation)
                .filter(granted -> granted.authorisation().person().equals(person))
                .orElseThrow(() -> new NotFoundException("authorisation"));
    }

    private String revoking(PersonId id, Granted granted, Typed typed, Model model) {
        model.addAttribute("person", PersonView.of(personPage.account(id).person()));
        model.addAttribute("granted", form.view(granted, labTime));
        model.addAttribute("typed", typed);
        model.addAttribute("errors", typed.errors());
        return "people/revoke";
    }
}
