package org.standclear.incident.web;

import jakarta.servlet.http.HttpServletResponse;
import java.util.Map;
import java.util.Optional;
import org.springframework.security.core.annotation.AuthenticationPrincipal;
import org.springframework.stereotype.Controller;
import org.springframework.ui.Model;
import org.springframework.web.bind.annotation.GetMapping;
import org.springframework.web.bind.annotation.PathVariable;
import org.springframework.web.bind.annotation.PostMapping;
import org.springframework.web.bind.annotation.RequestParam;
import org.standclear.incident.IncidentClass;
import org.standclear.incident.IncidentReviews;
import org.standclear.incident.IncidentReviews.Classification;
import org.standclear.incident.Severity;
import org.standclear.incident.web.ReviewDesk.Sent;
import org.standclear.people.People;
import org.standclear.people.Person;
import org.standclear.platform.ids.IncidentId;
import org.standclear.platform.security.SignedInPerson;

/** Begins a review: who reviews, what class it is, who had a part in it. */
@Controller
class ReviewPages {

    private final IncidentReviews reviews;
    private final ReviewDesk desk;
    private final People people;

    ReviewPages(IncidentReviews reviews, ReviewDesk desk, People people) {
        this.reviews = reviews;
        this.desk = desk;
        this.people = people;
    }

    @GetMapping("/incidents/{incident}/review")
    String show(@PathVariable IncidentId incident, @AuthenticationPrincipal SignedInPerson me, Model model) {
        return desk.page(incident, me, model);
    }

    @PostMapping("/incidents/{incident}/review")
    String take(
            @PathVariable IncidentId incident,
            @RequestParam Map<String, String> typed,
            @AuthenticationPrincipal SignedInPerson me,
            HttpServletResponse response,
            Model model) {
        return desk.act(Sent.of(incident, typed, me, response, model), () -> reviews.take(incident, me.id()));
    }

    @PostMapping("/incidents/{incident}/class")
    String classify(
            @PathVariable IncidentId incident,
            @RequestParam Map<String, String> typed,
            @AuthenticationPrincipal SignedInPerson me,
            HttpServletResponse response,
            Model model) {
        Sent sent = Sent.of(incident, typed, me, response, model);
        IncidentFields fields = sent.fields();
        Optional<IncidentClass> kind = fields.choice("kind", IncidentClass::of, "Choose the class.");
        Optional<Severity> actual = fields.choice("actual", Severity::of, "Say how bad it was.");
        Optional<Severity> foreseeable =
                fields.choice("foreseeable", Severity::of, "Say how bad it could reasonably have been.");
        String because = fields.line("because", 500, "Say why.");
        return desk.act(
                sent,
                () -> reviews.classify(
                        incident, new Classification(kind.get(), actual.get(), foreseeable.get(), because), me.id()));
    }

    @PostMapping("/incidents/{incident}/people")
    String name(
            @PathVariable IncidentId incident,
            @RequestParam Map<String, String> typed,
            @AuthenticationPrincipal SignedInPerson me,
            HttpServletResponse response,
            Model model) {
        Sent sent = Sent.of(incident, typed, me, response, model);
        Optional<Person> person = people.byLogin(sent.fields().raw("person"))
                .filter(one -> !one.roles().isEmpty());
        if (person.isEmpty()) {
            sent.fields().refuse("person", "Nobody signs in with that name.");
        }
        String part = sent.fields().line("part", 60, "Say in a few words what their part was.");
        return desk.act(sent, () -> reviews.name(incident, person.get().id(), part, me.id()));
    }
}
