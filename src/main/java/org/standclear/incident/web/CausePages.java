package org.standclear.incident.web;

import jakarta.servlet.http.HttpServletResponse;
import java.time.LocalDate;
import java.util.Map;
import java.util.Optional;
import java.util.UUID;
import org.jspecify.annotations.Nullable;
import org.springframework.security.core.annotation.AuthenticationPrincipal;
import org.springframework.stereotype.Controller;
import org.springframework.ui.Model;
import org.springframework.web.bind.annotation.PathVariable;
import org.springframework.web.bind.annotation.PostMapping;
import org.springframework.web.bind.annotation.RequestParam;
import org.standclear.incident.CauseBranch;
import org.standclear.incident.ControlLevel;
import org.standclear.incident.IncidentReviews;
import org.standclear.incident.IncidentReviews.NewAction;
import org.standclear.incident.IncidentReviews.NewCause;
import org.standclear.incident.web.ReviewDesk.Sent;
import org.standclear.platform.ids.IncidentId;
import org.standclear.platform.ids.PersonId;
import org.standclear.platform.security.SignedInPerson;

/** The tree of causes, and what is done about them. */
@Controller
class CausePages {

    private final IncidentReviews reviews;
    private final IncidentChoices choices;
    private final ReviewDesk desk;

    CausePages(IncidentReviews reviews, IncidentChoices choices, ReviewDesk desk) {
        this.reviews = reviews;
        this.choices = choices;
        this.desk = desk;
    }

    @PostMapping("/incidents/{incident}/causes")
    String add(
            @PathVariable IncidentId incident,
            @RequestParam Map<String, String> typed,
            @AuthenticationPrincipal SignedInPerson me,
            HttpServletResponse response,
            Model model) {
        Sent sent = Sent.of(incident, typed, me, response, model);
        IncidentFields fields = sent.fields();
        Optional<CauseBranch> branch = fields.choice("branch", CauseBranch::of, "Choose the branch.");
        UUID parent = parent(fields);
        String words = fields.line("cause", 500, "Say the cause in a sentence.");
        return desk.act(sent, () -> reviews.addCause(incident, new NewCause(branch.get(), parent, words), me.id()));
    }

    private static @Nullable UUID parent(IncidentFields fields) {
        return fields.raw("parent").isEmpty()
                ? null
                : fields.id("parent", "Choose a cause from the list.").orElse(null);
    }

    @PostMapping("/incidents/{incident}/causes/{cause}/strike")
    String strike(
            @PathVariable IncidentId incident,
            @PathVariable UUID cause,
            @RequestParam Map<String, String> typed,
            @AuthenticationPrincipal SignedInPerson me,
            HttpServletResponse response,
            Model model) {
        return desk.act(
                Sent.of(incident, typed, me, response, model), () -> reviews.strikeCause(incident, cause, me.id()));
    }

    @PostMapping("/incidents/{incident}/actions")
    String agree(
            @PathVariable IncidentId incident,
            @RequestParam Map<String, String> typed,
            @AuthenticationPrincipal SignedInPerson me,
            HttpServletResponse response,
            Model model) {
        Sent sent = Sent.of(incident, typed, me, response, model);
        IncidentFields fields = sent.fields();
        String words = fields.line("action", 500, "Say what is to be done.");
        Optional<ControlLevel> level = fields.choice("level", ControlLevel::of, "Choose the level.");
        Optional<PersonId> owner = fields.choice(
                "owner",
                id -> Optional.ofNullable(id)
                        .filter(choices.owners()::containsKey)
                        .map(PersonId::of),
                "Choose who does it.");
        Optional<LocalDate> due = fields.date("dueOn");
        return desk.act(
                sent,
                () -> reviews.agree(incident, new NewAction(words, level.get(), owner.get(), due.get()), me.id()));
    }
}
