package org.standclear.incident.web;

import jakarta.servlet.http.HttpServletResponse;
import java.util.Map;
import java.util.Optional;
import org.springframework.http.HttpStatus;
import org.springframework.security.core.annotation.AuthenticationPrincipal;
import org.springframework.stereotype.Controller;
import org.springframework.ui.Model;
import org.springframework.web.bind.annotation.PathVariable;
import org.springframework.web.bind.annotation.PostMapping;
import org.springframework.web.bind.annotation.RequestParam;
import org.standclear.incident.Incident;
import org.standclear.incident.IncidentOutcome;
import org.standclear.incident.IncidentReports;
import org.standclear.platform.forms.PostOnce;
import org.standclear.platform.ids.IncidentId;
import org.standclear.platform.security.SignedInPerson;

/** A statement to an incident, from whoever sees it; those who had a part in it say it here and not in the form. */
@Controller
class StatementPages {

    private static final int LONGEST = 4000;

    private final IncidentReports reports;
    private final IncidentAccess access;
    private final IncidentPages pages;
    private final PostOnce once;

    StatementPages(IncidentReports reports, IncidentAccess access, IncidentPages pages, PostOnce once) {
        this.reports = reports;
        this.access = access;
        this.pages = pages;
        this.once = once;
    }

    @PostMapping("/incidents/{incident}/statements")
    String add(
            @PathVariable IncidentId incident,
            @RequestParam Map<String, String> typed,
            @AuthenticationPrincipal SignedInPerson me,
            HttpServletResponse response,
            Model model) {
        Incident found = access.visible(incident, me);
        IncidentFields fields = new IncidentFields(typed);
        String words =
                fields.lines("statement", LONGEST, "Say what you saw or did, in the order in which it happened.");
        Optional<String> next = fields.fit()
                ? once.run(typed.get("formToken"), () -> {
                    if (reports.state(incident, words, me.id()) instanceof IncidentOutcome.Refused refused) {
                        fields.refuse(refused.field(), refused.says());
                        return null;
                    }
                    return "/incidents/" + incident;
                })
                : Optional.empty();
        if (next.isPresent()) {
            return "redirect:" + next.get();
        }
        response.setStatus(HttpStatus.UNPROCESSABLE_CONTENT.value());
        model.addAttribute("typedStatement", fields.raw("statement"));
        return pages.page(found, me, fields.errors(), model);
    }
}
