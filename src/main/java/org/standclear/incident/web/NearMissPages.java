package org.standclear.incident.web;

import jakarta.servlet.http.HttpServletResponse;
import java.util.HashMap;
import java.util.Map;
import java.util.Optional;
import org.jspecify.annotations.Nullable;
import org.springframework.http.HttpStatus;
import org.springframework.security.core.annotation.AuthenticationPrincipal;
import org.springframework.stereotype.Controller;
import org.springframework.ui.Model;
import org.springframework.web.bind.annotation.GetMapping;
import org.springframework.web.bind.annotation.PostMapping;
import org.springframework.web.bind.annotation.RequestParam;
import org.standclear.incident.IncidentClass;
import org.standclear.incident.IncidentReports;
import org.standclear.incident.IncidentReports.Report;
import org.standclear.incident.IncidentReports.Reported;
import org.standclear.incident.IncidentReports.Teller;
import org.standclear.incident.ReporterPart;
import org.standclear.platform.forms.PostOnce;
import org.standclear.platform.ids.CellId;
import org.standclear.platform.security.Role;
import org.standclear.platform.security.SignedInPerson;

/** The short form: cell, class, one sentence, send. Sent without a name, nothing that names the sender is passed on. */
@Controller
class NearMissPages {

    static final int LONGEST_SENTENCE = 300;

    private final IncidentReports reports;
    private final IncidentChoices choices;
    private final PostOnce once;

    NearMissPages(IncidentReports reports, IncidentChoices choices, PostOnce once) {
        this.reports = reports;
        this.choices = choices;
        this.once = once;
    }

    @GetMapping("/incidents/near-miss")
    String form(
            @RequestParam(required = false) @Nullable String cell,
            @AuthenticationPrincipal SignedInPerson me,
            Model model) {
        Map<String, String> typed = new HashMap<>();
        typed.put("kind", IncidentClass.NEAR_MISS.code());
        choices.cell(cell).ifPresent(known -> typed.put("cell", known.toString()));
        return page(typed, Map.of(), me, model);
    }

    @PostMapping("/incidents/near-miss")
    String send(
            @RequestParam Map<String, String> typed,
            @AuthenticationPrincipal SignedInPerson me,
            HttpServletResponse response,
            Model model) {
        IncidentFields fields = new IncidentFields(typed);
        Optional<CellId> cell = fields.choice("cell", choices::cell, "Choose the cell.");
        Optional<IncidentClass> kind = fields.choice("kind", IncidentClass::of, "Choose what it was.");
        String sentence = fields.line("sentence", LONGEST_SENTENCE, "Say in one sentence what happened.");
        Optional<String> next = fields.fit()
                ? once.runPatiently(
                        typed.get("formToken"),
                        () -> sent(Report.brief(cell.get(), kind.get(), sentence, teller(typed, me)), fields))
                : Optional.empty();
        if (next.isPresent()) {
            return "redirect:" + next.get();
        }
        response.setStatus(HttpStatus.UNPROCESSABLE_CONTENT.value());
        return page(typed, fields.errors(), me, model);
    }

    private @Nullable String sent(Report report, IncidentFields fields) {
        Reported reported = reports.report(report);
        if (reported instanceof Reported.Refused refused) {
            fields.refuse(refused.field(), refused.says());
            return null;
        }
        Reported.Kept kept = (Reported.Kept) reported;
        return kept.receipt() == null ? "/incidents/" + kept.incident() : "/incidents/receipts/" + kept.receipt();
    }

    private static Teller teller(Map<String, String> typed, SignedInPerson me) {
        if (me.is(Role.BENCH)) {
            return new Teller.AtScreen(me.id());
        }
        return "no".equals(typed.get("signed"))
                ? new Teller.Anonymous()
                : new Teller.Named(me.id(), ReporterPart.UNKNOWN);
    }

    private String page(Map<String, String> typed, Map<String, String> errors, SignedInPerson me, Model model) {
        model.addAttribute("typed", typed);
        model.addAttribute("errors", errors);
        model.addAttribute("cells", choices.cells());
        model.addAttribute("classes", IncidentChoices.classes());
        model.addAttribute("screen", me.is(Role.BENCH));
        return "incident/near-miss";
    }
}
