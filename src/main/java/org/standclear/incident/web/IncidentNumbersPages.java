package org.standclear.incident.web;

import jakarta.servlet.http.HttpServletResponse;
import java.util.Map;
import org.springframework.security.core.annotation.AuthenticationPrincipal;
import org.springframework.stereotype.Controller;
import org.springframework.ui.Model;
import org.springframework.web.bind.annotation.GetMapping;
import org.springframework.web.bind.annotation.PostMapping;
import org.springframework.web.bind.annotation.RequestParam;
import org.standclear.incident.IncidentNumbers;
import org.standclear.incident.IncidentSettings;
import org.standclear.people.People;
import org.standclear.platform.forms.PostOnce;
import org.standclear.platform.numbers.web.NumbersPage;
import org.standclear.platform.security.Role;
import org.standclear.platform.security.SignedInPerson;
import org.standclear.platform.time.LabTime;

/** The numbers of incidents: what holds, since when and why, and the form that changes them. */
@Controller
class IncidentNumbersPages {

    private static final String ADDRESS = "/incident-numbers";

    private final NumbersPage<IncidentSettings> page;

    IncidentNumbersPages(IncidentNumbers numbers, People people, PostOnce once, LabTime labTime) {
        page = new NumbersPage<>(
                numbers,
                IncidentNumbers.SET,
                new NumbersPage.Place(ADDRESS, "incident/numbers", "The numbers of incidents"),
                new NumbersPage.Words(people::printedName, labTime::full),
                once::run);
    }

    @GetMapping(ADDRESS)
    String show(@AuthenticationPrincipal SignedInPerson me, Model model) {
        return page.show(me.is(Role.INSTRUCTOR), model);
    }

    @PostMapping(ADDRESS)
    String change(
            @RequestParam Map<String, String> fields,
            @AuthenticationPrincipal SignedInPerson me,
            HttpServletResponse response,
            Model model) {
        return page.change(me.is(Role.INSTRUCTOR), fields, me.id(), response, model);
    }
}
