package org.standclear.incident.web;

import jakarta.servlet.http.HttpServletResponse;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.springframework.http.HttpStatus;
import org.springframework.security.core.annotation.AuthenticationPrincipal;
import org.springframework.stereotype.Controller;
import org.springframework.ui.Model;
import org.springframework.web.bind.annotation.GetMapping;
import org.springframework.web.bind.annotation.PathVariable;
import org.springframework.web.bind.annotation.PostMapping;
import org.springframework.web.bind.annotation.RequestParam;
import org.standclear.incident.Incident;
import org.standclear.incident.MedicalNotes;
import org.standclear.people.People;
import org.standclear.platform.access.AccessLog;
import org.standclear.platform.access.Sight;
import org.standclear.platform.forms.PostOnce;
import org.standclear.platform.ids.IncidentId;
import org.standclear.platform.ids.PersonId;
import org.standclear.platform.security.SignedInPerson;
import org.standclear.platform.time.LabTime;

/** The restricted part of an incident; whoever opens it is written down. */
@Controller
class MedicalPages {

    private final MedicalNotes notes;
    private final IncidentAccess access;
    private final IncidentViews views;
    private final People people;
    private final LabTime labTime;
    private final PostOnce once;
    private final AccessLog looks;

    MedicalPages(
            MedicalNotes notes,
            IncidentAccess access,
            IncidentViews views,
            People people,
            LabTime labTime,
            PostOnce once,
            AccessLog looks) {
        this.notes = notes;
        this.access = access;
        this.views = views;
        this.people = people;
        this.labTime = labTime;
        this.once = once;
        this.looks = looks;
    }

    /** A note, or that somebody opened them. */
    record Line(String who, String at, String words) {}

    @GetMapping("/incidents/{incident}/medical")
    String open(@PathVariable IncidentId incident, @AuthenticationPrincipal SignedInPerson me, Model model) {
        return page(access.visible(incident, me), me, Map.of(), Map.of(), model);
    }

    @PostMapping("/incidents/{incident}/medical")
    String write(
            @PathVariable IncidentId incident,
            @RequestParam Map<String, String> typed,
            @AuthenticationPrincipal SignedInPerson me,
            HttpServletResponse response,
            Model model) {
        Incident found = access.visible(incident, me);
        IncidentFields fields = new IncidentFields(typed);
        String words = fields.lines("note", 2000, "Write the note.");
        Optional<String> next = fields.fit()
                ? once.run(typed.get("formToken"), () -> {
                    notes.write(incident, words, me.id());
                    return "/incidents/" + incident + "/medical";
                })
                : Optional.empty();
        if (next.isPresent()) {
            return "redirect:" + next.get();
        }
        response.setStatus(HttpStatus.UNPROCESSABLE_CONTENT.value());
        return page(found, me, typed, fields.errors(), model);
    }

    private String page(
            Incident incident, SignedInPerson me, Map<String, String> typed, Map<String, String> errors, Model model) {
        looks.looked(me.id(), Sight.MEDICAL, incident.id().toString(), incident.named());
        List<Line> kept = notes.open(incident.id(), me.id()).stream()
                .map(note -> new Line(name(note.by()), labTime.full(note.at()), note.words()))
                .toList();
        model.addAttribute("notes", kept);
        model.addAttribute(
                "opened",
                notes.opened(incident.id()).stream()
                        .map(one -> new Line(name(one.by()), labTime.full(one.at()), ""))
                        .toList());
        model.addAttribute("incidentTitle", views.title(incident));
        model.addAttribute("id", incident.id().toString());
        model.addAttribute("typed", typed);
        model.addAttribute("errors", errors);
        return "incident/medical";
    }

    private String name(PersonId person) {
        return people.printedName(person);
    }
}
