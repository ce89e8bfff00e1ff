package org.standclear.incident.web;

import jakarta.servlet.http.HttpServletResponse;
import java.time.LocalDate;
import java.util.Map;
import java.util.Optional;
import org.jspecify.annotations.Nullable;
import org.springframework.security.core.annotation.AuthenticationPrincipal;
import org.springframework.stereotype.Controller;
import org.springframework.ui.Model;
import org.springframework.web.bind.annotation.PathVariable;
import org.springframework.web.bind.annotation.PostMapping;
import org.springframework.web.bind.annotation.RequestParam;
import org.standclear.incident.IncidentReviews;
import org.standclear.incident.web.ReviewDesk.Sent;
import org.standclear.platform.ids.IncidentId;
import org.standclear.platform.security.SignedInPerson;

/** What comes out of a review: a word to the reporter, the risk assessment, the restart. */
@Controller
class OutcomePages {

    private final IncidentReviews reviews;
    private final ReviewDesk desk;

    OutcomePages(IncidentReviews reviews, ReviewDesk desk) {
        this.reviews = reviews;
        this.desk = desk;
    }

    @PostMapping("/incidents/{incident}/answers")
    String answer(
            @PathVariable IncidentId incident,
            @RequestParam Map<String, String> typed,
            @AuthenticationPrincipal SignedInPerson me,
            HttpServletResponse response,
            Model model) {
        Sent sent = Sent.of(incident, typed, me, response, model);
        String words = sent.fields().line("answer", 800, "Write what the reporter is to know.");
        return desk.act(sent, () -> reviews.answer(incident, words, me.id()));
    }

    @PostMapping("/incidents/{incident}/risk-reviews")
    String riskReview(
            @PathVariable IncidentId incident,
            @RequestParam Map<String, String> typed,
            @AuthenticationPrincipal SignedInPerson me,
            HttpServletResponse response,
            Model model) {
        Sent sent = Sent.of(incident, typed, me, response, model);
        Optional<LocalDate> on = sent.fields().date("reviewedOn");
        String outcome = sent.fields().line("outcome", 800, "Say what came out of it.");
        Integer version = version(sent.fields());
        return desk.act(sent, () -> reviews.riskReviewed(incident, on.get(), outcome, version, me.id()));
    }

    private static @Nullable Integer version(IncidentFields fields) {
        String raw = fields.raw("cellVersion");
        if (raw.isEmpty()) {
            return null;
        }
        try {
            return Integer.valueOf(raw);
        } catch (NumberFormatException notANumber) {
            fields.refuse("cellVersion", "Write the number of a version, or nothing.");
            return null;
        }
    }

    @PostMapping("/incidents/{incident}/restart")
    String restart(
            @PathVariable IncidentId incident,
            @RequestParam Map<String, String> typed,
            @AuthenticationPrincipal SignedInPerson me,
            HttpServletResponse response,
            Model model) {
        Sent sent = Sent.of(incident, typed, me, response, model);
        String words = sent.fields().line("restart", 800, "Say on what grounds the cell may run again.");
        return desk.act(sent, () -> reviews.approveRestart(incident, words, me.id()));
    }
}
