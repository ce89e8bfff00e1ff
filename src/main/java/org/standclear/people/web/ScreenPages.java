package org.standclear.people.web;

import jakarta.servlet.http.HttpServletResponse;
import java.util.Map;
import java.util.Optional;
import org.springframework.security.core.annotation.AuthenticationPrincipal;
import org.springframework.stereotype.Controller;
import org.springframework.ui.Model;
import org.springframework.web.bind.annotation.PathVariable;
import org.springframework.web.bind.annotation.PostMapping;
import org.springframework.web.bind.annotation.RequestParam;
import org.standclear.people.ScreenPlaces;
import org.standclear.platform.forms.PostOnce;
import org.standclear.platform.ids.CellId;
import org.standclear.platform.ids.PersonId;
import org.standclear.platform.security.SignedInPerson;

/** Says at which cell a shared bench screen stands, on the page of its account. */
@Controller
class ScreenPages {

    private final PersonPage personPage;
    private final ScreenPlaces screens;
    private final PostOnce postOnce;

    ScreenPages(PersonPage personPage, ScreenPlaces screens, PostOnce postOnce) {
        this.personPage = personPage;
        this.screens = screens;
        this.postOnce = postOnce;
    }

    @PostMapping("/people/{person}/cell")
    String place(
            @PathVariable PersonId person,
            @RequestParam Map<String, String> values,
            @AuthenticationPrincipal SignedInPerson me,
            HttpServletResponse response,
            Model model) {
        personPage.account(person);
        Typed typed = new Typed(values);
        Optional<String> done = postOnce.run(typed.raw("formToken"), () -> {
            Optional<CellId> cell = cell(typed);
            if (cell.isPresent() || typed.raw("cell").isEmpty()) {
                read(screens.place(person, cell.orElse(null), me.id()), typed);
            }
            return typed.errors().isEmpty() ? "/people/" + person : null;
        });
        if (done.isPresent()) {
            return "redirect:" + done.get();
        }
        return personPage.again(person, me, typed, response, model);
    }

    private static Optional<CellId> cell(Typed typed) {
        String chosen = typed.raw("cell");
        try {
            return chosen.isEmpty() ? Optional.empty() : Optional.of(CellId.of(chosen));
        } catch (IllegalArgumentException noId) {
            typed.refuse("cell", "Choose one of the lab's cells, or any cell.");
            return Optional.empty();
        }
    }

    private static void read(ScreenPlaces.Outcome outcome, Typed typed) {
        if (outcome instanceof ScreenPlaces.Outcome.Refused refused) {
            typed.refuse(refused.field(), refused.says());
        }
    }
}
