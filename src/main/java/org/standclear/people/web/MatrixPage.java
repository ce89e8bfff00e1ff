package org.standclear.people.web;

import java.time.Clock;
import java.time.Instant;
import java.util.ArrayList;
import java.util.Collection;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import org.jspecify.annotations.Nullable;
import org.springframework.security.core.annotation.AuthenticationPrincipal;
import org.springframework.stereotype.Controller;
import org.springframework.ui.Model;
import org.springframework.web.bind.annotation.GetMapping;
import org.springframework.web.bind.annotation.RequestParam;
import org.springframework.web.util.UriComponentsBuilder;
import org.standclear.people.AuthorisationRegister.Granted;
import org.standclear.people.Duty;
import org.standclear.people.Person;
import org.standclear.people.accounts.AccountList;
import org.standclear.people.accounts.AccountList.Filter;
import org.standclear.people.duties.StandingAuthorisations;
import org.standclear.platform.access.AccessLog;
import org.standclear.platform.access.Sight;
import org.standclear.platform.ids.CellId;
import org.standclear.platform.ids.PersonId;
import org.standclear.platform.lab.CellNames;
import org.standclear.platform.security.SignedInPerson;
import org.standclear.platform.time.LabTime;

/** Who may do what at which cell, and until when: one row a person, two columns a cell. */
@Controller
class MatrixPage {

    private static final int PAGE = 25;

    private final AccountList accounts;
    private final StandingAuthorisations authorisations;
    private final CellNames cells;
    private final LabTime labTime;
    private final Clock clock;
    private final AccessLog looks;

    MatrixPage(
            AccountList accounts,
            StandingAuthorisations authorisations,
            CellNames cells,
            LabTime labTime,
            Clock clock,
            AccessLog looks) {
        this.accounts = accounts;
        this.authorisations = authorisations;
        this.cells = cells;
        this.labTime = labTime;
        this.clock = clock;
        this.looks = looks;
    }

    @GetMapping("/people/authorisations")
    String matrix(
            @RequestParam(defaultValue = "") String find,
            @RequestParam(required = false) @Nullable PersonId after,
            @AuthenticationPrincipal SignedInPerson me,
            Model model) {
        looks.lookedAtMany(me.id(), Sight.AUTHORISATIONS, "all");
        AccountList.Page page = accounts.page(new Filter(find.strip(), null, false), after, PAGE);
        Map<CellId, String> names = cells.all();
        Collection<Granted> granted =
                authorisations.of(page.people().stream().map(Person::id).toList());
        model.addAttribute("cells", names.values());
        model.addAttribute(
                "rows",
                page.people().stream()
                        .map(person -> row(person, granted, names))
                        .toList());
        model.addAttribute("find", find.strip());
        model.addAttribute("first", after == null);
        model.addAttribute("next", page.last() == null ? null : next(find, page.last()));
        return "people/matrix";
    }

    private static String next(String find, PersonId last) {
        return UriComponentsBuilder.fromPath("/people/authorisations")
                .queryParam("find", "{find}")
                .queryParam("after", last)
                .encode()
                .buildAndExpand(find)
                .toUriString();
    }

    private Row row(Person person, Collection<Granted> granted, Map<CellId, String> names) {
        Instant now = clock.instant();
        List<@Nullable AuthorisationView> marks = new ArrayList<>();
        for (CellId cell : names.keySet()) {
            for (Duty duty : Duty.values()) {
                marks.add(mark(person, duty, cell, granted, now));
            }
        }
        return new Row(PersonView.of(person), marks);
    }

    /** The one that lasts longest; an ended one only when nothing stands. */
    private @Nullable AuthorisationView mark(
            Person person, Duty duty, CellId cell, Collection<Granted> granted, Instant now) {
        for (Granted one : granted) {
            var authorisation = one.authorisation();
            boolean fits = authorisation.person().equals(person.id())
                    && authorisation.duty() == duty
                    && (authorisation.cell() == null || authorisation.cell().equals(cell));
            if (fits) {
                return AuthorisationView.of(one, new LinkedHashMap<>(), labTime, now);
            }
        }
        return null;
    }

    /** A person's row; null where nothing was ever granted. */
    record Row(PersonView person, List<@Nullable AuthorisationView> marks) {}
}
