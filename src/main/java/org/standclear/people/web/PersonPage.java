package org.standclear.people.web;

import jakarta.servlet.http.HttpServletResponse;
import java.time.Clock;
import java.time.Instant;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.springframework.http.HttpStatus;
import org.springframework.stereotype.Component;
import org.springframework.ui.Model;
import org.standclear.people.Courses;
import org.standclear.people.ScreenPlaces;
import org.standclear.people.accounts.AccountList;
import org.standclear.people.accounts.AccountList.Account;
import org.standclear.people.duties.StandingAuthorisations;
import org.standclear.platform.access.AccessLog;
import org.standclear.platform.access.Sight;
import org.standclear.platform.ids.CellId;
import org.standclear.platform.ids.PersonId;
import org.standclear.platform.lab.CellNames;
import org.standclear.platform.security.Role;
import org.standclear.platform.security.SignedInPerson;
import org.standclear.platform.time.LabTime;
import org.standclear.platform.web.NotFoundException;

/** Puts together what the page of one person shows; several forms stand on it and come back to it when refused. */
@Component
class PersonPage {

    private final AccountList accounts;
    private final StandingAuthorisations authorisations;
    private final Courses courses;
    private final CellNames cells;
    private final ScreenPlaces screens;
    private final LabTime labTime;
    private final Clock clock;
    private final AccessLog looks;

    PersonPage(
            AccountList accounts,
            StandingAuthorisations authorisations,
            Courses courses,
            CellNames cells,
            ScreenPlaces screens,
            LabTime labTime,
            Clock clock,
            AccessLog looks) {
        this.accounts = accounts;
        this.authorisations = authorisations;
        this.courses = courses;
        this.cells = cells;
        this.screens = screens;
        this.labTime = labTime;
        this.clock = clock;
        this.looks = looks;
    }

    /** The account, or the page that says there is none. */
    Account account(PersonId person) {
        return accounts.find(person).orElseThrow(() -> new NotFoundException("person"));
    }

    String show(PersonId person, SignedInPerson me, Map<String, String> errors, Model model) {
        Account account = account(person);
        looks.looked(me.id(), Sight.ACCOUNT, person.toString(), List.of(person));
        Instant now = clock.instant();
        Map<CellId, String> names = cells.all();
        model.addAttribute("person", PersonView.of(account.person()));
        model.addAttribute("account", account);
        model.addAttribute(
                "authorisations",
                authorisations.of(List.of(person)).stream()
                        .map(granted -> AuthorisationView.of(granted, names, labTime, now))
                        .toList());
        model.addAttribute("enrolments", courses.enrolmentsOf(person));
        model.addAttribute("roles", RoleChoices.all());
        model.addAttribute("chosen", RoleChoices.names(account.person().roles()));
        model.addAttribute("mayKeepAccounts", me.is(Role.ADMINISTRATOR));
        model.addAttribute(
                "mayAuthorise",
                (me.is(Role.ADMINISTRATOR) || me.is(Role.INSTRUCTOR))
                        && account.person().active()
                        && !account.person().is(Role.BENCH));
        if (account.person().is(Role.BENCH)) {
            place(person, names, model);
        }
        model.addAttribute("isMe", person.equals(me.id()));
        model.addAttribute("errors", errors);
        return "people/person";
    }

    /** The page with what is wrong in a form that was sent from it. */
    String again(PersonId person, SignedInPerson me, Typed typed, HttpServletResponse response, Model model) {
        response.setStatus(HttpStatus.UNPROCESSABLE_CONTENT.value());
        return show(person, me, typed.errors(), model);
    }

    private void place(PersonId screen, Map<CellId, String> names, Model model) {
        Optional<CellId> cell = screens.cellOf(screen);
        Map<String, String> places = new LinkedHashMap<>();
        places.put("", "any cell");
        names.forEach((id, name) -> places.put(id.toString(), name));
        model.addAttribute("places", places);
        model.addAttribute("place", cell.map(CellId::toString).orElse(""));
        model.addAttribute(
                "placeWords", cell.map(id -> names.getOrDefault(id, "a cell")).orElse("any cell"));
    }
}
