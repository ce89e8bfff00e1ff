package org.standclear.incident.web;

import jakarta.servlet.http.HttpServletResponse;
import java.util.Map;
import java.util.Optional;
import java.util.function.Supplier;
import org.springframework.http.HttpStatus;
import org.springframework.stereotype.Component;
import org.springframework.ui.Model;
import org.standclear.incident.Incident;
import org.standclear.incident.IncidentOutcome;
import org.standclear.incident.IncidentReviews;
import org.standclear.incident.Incidents;
import org.standclear.platform.forms.PostOnce;
import org.standclear.platform.ids.IncidentId;
import org.standclear.platform.security.SignedInPerson;
import org.standclear.platform.time.LabTime;

/** The page of a review, and what all of its forms have in common. */
@Component
class ReviewDesk {

    private final Incidents incidents;
    private final IncidentReviews reviews;
    private final IncidentAccess access;
    private final IncidentViews views;
    private final IncidentChoices choices;
    private final LabTime labTime;
    private final PostOnce once;

    ReviewDesk(
            Incidents incidents,
            IncidentReviews reviews,
            IncidentAccess access,
            IncidentViews views,
            IncidentChoices choices,
            LabTime labTime,
            PostOnce once) {
        this.incidents = incidents;
        this.reviews = reviews;
        this.access = access;
        this.views = views;
        this.choices = choices;
        this.labTime = labTime;
        this.once = once;
    }

    /** What came in with a form of the review. */
    record Sent(
            IncidentId incident,
            Map<String, String> typed,
            IncidentFields fields,
            SignedInPerson me,
            HttpServletResponse response,
            Model model) {

        static Sent of(
                IncidentId incident,
                Map<String, String> typed,
                SignedInPerson me,
                HttpServletResponse response,
                Model model) {
            return new Sent(incident, typed, new IncidentFields(typed), me, response, model);
        }
    }

    /** Does the act once when the fields fit, and shows the page again with what is wrong when it is refused. */
    String act(Sent sent, Supplier<IncidentOutcome> act) {
        Incident incident = access.visible(sent.incident(), sent.me());
        Optional<String> next = sent.fields().fit()
                ? once.run(sent.typed().get("formToken"), () -> {
                    if (act.get() instanceof IncidentOutcome.Refused refused) {
                        sent.fields().refuse(refused.field(), refused.says());
                        return null;
                    }
                    return "/incidents/" + sent.incident() + "/review";
                })
                : Optional.empty();
        if (next.isPresent()) {
            return "redirect:" + next.get();
        }
        sent.response().setStatus(HttpStatus.UNPROCESSABLE_CONTENT.value());
        return page(incident, sent.me(), sent.typed(), sent.fields().errors(), sent.model());
    }

    String page(IncidentId id, SignedInPerson me, Model model) {
        return page(access.visible(id, me), me, Map.of(), Map.of(), model);
    }

    private String page(
            Incident incident, SignedInPerson me, Map<String, String> typed, Map<String, String> errors, Model model) {
        model.addAttribute("view", views.of(incident, me));
        model.addAttribute("taken", incident.reviewer() != null);
        model.addAttribute("holdsCell", incident.kind().holdsCell());
        model.addAttribute("missing", reviews.missing(incident, me.id()));
        model.addAttribute("closed", incident.closedAt() != null);
        model.addAttribute("kind", incident.kind().code());
        model.addAttribute("typed", typed);
        model.addAttribute("errors", errors);
        model.addAttribute("classes", IncidentChoices.classes());
        model.addAttribute("severities", IncidentChoices.severities());
        model.addAttribute("branches", IncidentChoices.branches());
        model.addAttribute("levels", IncidentChoices.levels());
        model.addAttribute("parents", CauseTree.parents(incidents.causes(incident.id())));
        model.addAttribute("owners", choices.owners());
        model.addAttribute("today", labTime.today().toString());
        return "incident/review";
    }
}
