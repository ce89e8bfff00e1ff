package org.standclear.incident.web;

import jakarta.servlet.http.HttpServletResponse;
import java.util.List;
import java.util.Map;
import org.springframework.http.HttpStatus;
import org.springframework.security.core.annotation.AuthenticationPrincipal;
import org.springframework.stereotype.Controller;
import org.springframework.ui.Model;
import org.springframework.web.bind.annotation.GetMapping;
import org.springframework.web.bind.annotation.PathVariable;
import org.springframework.web.bind.annotation.RequestParam;
import org.standclear.incident.Incident;
import org.standclear.incident.Incidents;
import org.standclear.platform.access.AccessLog;
import org.standclear.platform.access.Sight;
import org.standclear.platform.ids.IncidentId;
import org.standclear.platform.security.SignedInPerson;
import org.standclear.platform.time.LabTime;

/** The list of incidents, and the page of one. */
@Controller
class IncidentPages {

    private static final int PAGE = 30;

    private final Incidents incidents;
    private final IncidentAccess access;
    private final IncidentViews views;
    private final ReporterViews reporterViews;
    private final TellingViews tellingViews;
    private final IncidentChoices choices;
    private final LabTime labTime;
    private final AccessLog looks;

    IncidentPages(
            Incidents incidents,
            IncidentAccess access,
            IncidentViews views,
            ReporterViews reporterViews,
            TellingViews tellingViews,
            IncidentChoices choices,
            LabTime labTime,
            AccessLog looks) {
        this.incidents = incidents;
        this.access = access;
        this.views = views;
        this.reporterViews = reporterViews;
        this.tellingViews = tellingViews;
        this.choices = choices;
        this.labTime = labTime;
        this.looks = looks;
    }

    /** A line of the list. */
    record Line(
            String id,
            int number,
            String when,
            String kind,
            String cell,
            String sentence,
            String state,
            String stateWords,
            ReporterViews.FormView form,
            String run) {}

    @GetMapping("/incidents")
    String list(
            @RequestParam Map<String, String> parameters,
            @AuthenticationPrincipal SignedInPerson me,
            HttpServletResponse response,
            Model model) {
        IncidentFilterForm form = IncidentFilterForm.of(parameters);
        Map<String, String> errors = form.errors();
        if (!errors.isEmpty()) {
            response.setStatus(HttpStatus.UNPROCESSABLE_CONTENT.value());
        }
        boolean all = IncidentAccess.seesAll(me);
        Incidents.Page page = errors.isEmpty()
                ? incidents.page(form.filter(all ? null : me.id()), form.position(), PAGE)
                : new Incidents.Page(List.of(), null);
        model.addAttribute("form", form);
        model.addAttribute("errors", errors);
        model.addAttribute("lines", page.incidents().stream().map(this::line).toList());
        model.addAttribute("next", page.next() == null ? null : form.address(page.next()));
        model.addAttribute("cells", IncidentChoices.withAny("all cells", choices.cells()));
        model.addAttribute("states", IncidentChoices.withAny("any state", IncidentChoices.states()));
        model.addAttribute("classes", IncidentChoices.withAny("all classes", IncidentChoices.classes()));
        model.addAttribute("all", all);
        return "incident/list";
    }

    private Line line(Incident incident) {
        return new Line(
                incident.id().toString(),
                incident.number(),
                labTime.full(incident.happenedAt()),
                incident.kind().label(),
                reporterViews.cell(incident),
                incident.sentence(),
                ReporterViews.mark(incident),
                incident.state().words(),
                reporterViews.form(incident),
                incident.run() == null ? "" : incident.run().toString());
    }

    @GetMapping("/incidents/{incident}")
    String show(@PathVariable IncidentId incident, @AuthenticationPrincipal SignedInPerson me, Model model) {
        return page(access.visible(incident, me), me, Map.of(), model);
    }

    /** The page of an incident: all of it for those who work on it, the answers for its reporter. */
    String page(Incident incident, SignedInPerson me, Map<String, String> errors, Model model) {
        model.addAttribute("errors", errors);
        model.addAttribute("telling", tellingViews.of(incident, me.id(), IncidentAccess.seesAll(me)));
        if (IncidentAccess.seesAll(me)) {
            looks.looked(me.id(), Sight.INCIDENT, incident.id().toString(), incident.named());
            model.addAttribute("view", views.of(incident, me));
            return "incident/show";
        }
        model.addAttribute("view", reporterViews.of(incident));
        model.addAttribute("photos", views.photos(incident, me.id()));
        model.addAttribute("receipt", null);
        return "incident/mine";
    }
}
