package org.standclear.incident.web;

import jakarta.servlet.http.HttpServletResponse;
import java.time.Clock;
import java.time.Instant;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.stream.Collectors;
import org.jspecify.annotations.Nullable;
import org.springframework.http.HttpStatus;
import org.springframework.security.core.annotation.AuthenticationPrincipal;
import org.springframework.stereotype.Controller;
import org.springframework.ui.Model;
import org.springframework.util.MultiValueMap;
import org.springframework.web.bind.annotation.GetMapping;
import org.springframework.web.bind.annotation.PathVariable;
import org.springframework.web.bind.annotation.PostMapping;
import org.springframework.web.bind.annotation.RequestParam;
import org.standclear.incident.Incident;
import org.standclear.incident.IncidentClass;
import org.standclear.incident.IncidentOutcome;
import org.standclear.incident.IncidentReports;
import org.standclear.incident.IncidentReports.Report;
import org.standclear.incident.IncidentReports.Reported;
import org.standclear.incident.IncidentReports.Teller;
import org.standclear.incident.Incidents;
import org.standclear.incident.RecordableOutcome;
import org.standclear.incident.ReporterPart;
import org.standclear.incident.Severity;
import org.standclear.platform.access.AccessLog;
import org.standclear.platform.access.Sight;
import org.standclear.platform.forms.PostOnce;
import org.standclear.platform.ids.CellId;
import org.standclear.platform.ids.IncidentId;
import org.standclear.platform.security.SignedInPerson;
import org.standclear.platform.time.LabTime;
import org.standclear.platform.web.StaleFormException;

/** The full form: of a new report, or of one that was sent by the short form. */
@Controller
class ReportPages {

    private final IncidentReports reports;
    private final Incidents incidents;
    private final IncidentAccess access;
    private final IncidentChoices choices;
    private final ReporterViews reporterViews;
    private final LabTime labTime;
    private final PostOnce once;
    private final Clock clock;
    private final AccessLog looks;

    ReportPages(
            IncidentReports reports,
            Incidents incidents,
            IncidentAccess access,
            IncidentChoices choices,
            ReporterViews reporterViews,
            LabTime labTime,
            PostOnce once,
            Clock clock,
            AccessLog looks) {
        this.reports = reports;
        this.incidents = incidents;
        this.access = access;
        this.choices = choices;
        this.reporterViews = reporterViews;
        this.labTime = labTime;
        this.once = once;
        this.clock = clock;
        this.looks = looks;
    }

    @GetMapping("/incidents/report")
    String form(
            @RequestParam(required = false) @Nullable String cell,
            @AuthenticationPrincipal SignedInPerson me,
            Model model) {
        Map<String, String> typed = new HashMap<>();
        Instant now = clock.instant();
        choices.cell(cell).ifPresent(known -> typed.put("cell", known.toString()));
        typed.put("date", labTime.date(now).toString());
        typed.put("time", labTime.time(now).substring(0, 5));
        return page(null, me, typed, List.of(), Map.of(), model);
    }

    @PostMapping("/incidents/report")
    String send(
            @RequestParam MultiValueMap<String, String> sent,
            @AuthenticationPrincipal SignedInPerson me,
            HttpServletResponse response,
            Model model) {
        IncidentFields fields = new IncidentFields(sent.toSingleValueMap());
        Optional<CellId> cell = fields.choice("cell", choices::cell, "Choose the cell.");
        Optional<IncidentClass> kind = kind(fields);
        String sentence = fields.line("sentence", NearMissPages.LONGEST_SENTENCE, "Say in one sentence what happened.");
        Optional<Instant> happened = fields.instant("date", "time", labTime.zone());
        Optional<ReporterPart> part = fields.choice("part", ReporterPart::of, "Say what you had to do with it.");
        Incident.Form form = form(fields, sent);
        Optional<String> next = fields.fit()
                ? once.runPatiently(
                        sent.getFirst("formToken"),
                        () -> kept(
                                reports.report(new Report(
                                        cell.get(),
                                        kind.get(),
                                        sentence,
                                        happened.get(),
                                        new Teller.Named(me.id(), part.get()),
                                        null,
                                        form)),
                                fields))
                : Optional.empty();
        return answer(next, null, me, fields, sent, response, model);
    }

    private static @Nullable String kept(Reported reported, IncidentFields fields) {
        if (reported instanceof Reported.Refused refused) {
            fields.refuse(refused.field(), refused.says());
            return null;
        }
        return "/incidents/" + ((Reported.Kept) reported).incident();
    }

    @GetMapping("/incidents/{incident}/form")
    String formOf(@PathVariable IncidentId incident, @AuthenticationPrincipal SignedInPerson me, Model model) {
        Incident found = access.visible(incident, me);
        if (found.involves(me.id())) {
            return "redirect:/incidents/" + incident + "#statements";
        }
        Map<String, String> typed = new HashMap<>();
        typed.put("kind", found.kind().code());
        typed.put("seen", String.valueOf(incidents.forms(incident).size()));
        Incident.Form form = found.form();
        if (form != null) {
            typed.put("story", form.story());
            typed.put("atOnce", form.doneAtOnce());
            typed.put("actual", form.actual().code());
            typed.put("foreseeable", form.foreseeable().code());
        }
        List<String> outcomes = form == null
                ? List.of()
                : form.outcomes().stream().map(RecordableOutcome::code).toList();
        return page(found, me, typed, outcomes, Map.of(), model);
    }

    @PostMapping("/incidents/{incident}/form")
    String fill(
            @PathVariable IncidentId incident,
            @RequestParam MultiValueMap<String, String> sent,
            @AuthenticationPrincipal SignedInPerson me,
            HttpServletResponse response,
            Model model) {
        Incident found = access.visible(incident, me);
        IncidentFields fields = new IncidentFields(sent.toSingleValueMap());
        Optional<IncidentClass> kind = kind(fields);
        Incident.Form form = form(fields, sent);
        Optional<String> next = fields.fit()
                ? once.runPatiently(sent.getFirst("formToken"), () -> {
                    IncidentOutcome outcome = reports.fill(
                            incident, new IncidentReports.Filling(kind.get(), form, seen(fields)), me.id());
                    if (outcome instanceof IncidentOutcome.Stale stale) {
                        throw stale(stale.now(), kind.get(), form);
                    }
                    if (outcome instanceof IncidentOutcome.Refused refused) {
                        fields.refuse(refused.field(), refused.says());
                        return null;
                    }
                    return "/incidents/" + incident;
                })
                : Optional.empty();
        return answer(next, found, me, fields, sent, response, model);
    }

    private static @Nullable Integer seen(IncidentFields fields) {
        String seen = fields.raw("seen");
        return seen.matches("[0-9]{1,6}") ? Integer.valueOf(seen) : null;
    }

    private static StaleFormException stale(Incident now, IncidentClass kind, Incident.Form form) {
        return new StaleFormException(
                "the form of incident " + now.number(),
                "/incidents/" + now.id() + "/form",
                IncidentChoices.words(kind, form),
                now.form() == null ? Map.of() : IncidentChoices.words(now.kind(), now.form()));
    }

    private static Optional<IncidentClass> kind(IncidentFields fields) {
        return fields.choice("kind", IncidentClass::of, "Choose what it was.");
    }

    private static Incident.Form form(IncidentFields fields, MultiValueMap<String, String> sent) {
        String story = fields.lines("story", 4000, "Tell what happened, in the order in which it happened.");
        String atOnce = fields.linesOrNone("atOnce", 2000);
        Optional<Severity> actual = fields.choice("actual", Severity::of, "Say how bad it was.");
        Optional<Severity> foreseeable =
                fields.choice("foreseeable", Severity::of, "Say how bad it could reasonably have been.");
        var outcomes = sent.getOrDefault("outcomes", List.of()).stream()
                .flatMap(code -> RecordableOutcome.of(code).stream())
                .collect(Collectors.toSet());
        IncidentClass.of(fields.raw("kind"))
                .ifPresent(kind -> outcomes.stream()
                        .filter(outcome -> kind.compareTo(outcome.atLeast()) < 0)
                        .findFirst()
                        .ifPresent(outcome -> fields.refuse(
                                "kind",
                                "You chose: " + outcome.words() + ". That is "
                                        + outcome.atLeast().label() + " at least.")));
        return new Incident.Form(
                story, atOnce, actual.orElse(Severity.NONE), foreseeable.orElse(Severity.NONE), outcomes);
    }

    private String answer(
            Optional<String> next,
            @Nullable Incident incident,
            SignedInPerson me,
            IncidentFields fields,
            MultiValueMap<String, String> sent,
            HttpServletResponse response,
            Model model) {
        if (next.isPresent()) {
            return "redirect:" + next.get();
        }
        response.setStatus(HttpStatus.UNPROCESSABLE_CONTENT.value());
        return page(
                incident,
                me,
                sent.toSingleValueMap(),
                sent.getOrDefault("outcomes", List.of()),
                fields.errors(),
                model);
    }

    private String page(
            @Nullable Incident incident,
            SignedInPerson me,
            Map<String, String> typed,
            List<String> outcomes,
            Map<String, String> errors,
            Model model) {
        if (incident != null && IncidentAccess.seesAll(me)) {
            looks.looked(me.id(), Sight.INCIDENT, incident.id().toString(), incident.named());
        }
        model.addAttribute("typed", typed);
        model.addAttribute("chosen", outcomes);
        model.addAttribute("errors", errors);
        model.addAttribute("cells", choices.cells());
        model.addAttribute("classes", IncidentChoices.classes());
        model.addAttribute("severities", IncidentChoices.severities());
        model.addAttribute("outcomes", IncidentChoices.outcomes());
        model.addAttribute("parts", IncidentChoices.parts());
        model.addAttribute("view", incident == null ? null : reporterViews.of(incident, me.id()));
        return "incident/report";
    }
}
