package org.standclear.incident.web;

import jakarta.servlet.http.HttpServletResponse;
import java.util.HashMap;
import java.util.Map;
import java.util.Optional;
import java.util.concurrent.atomic.AtomicReference;
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
import org.standclear.incident.Incidents;
import org.standclear.incident.ReporterPart;
import org.standclear.platform.forms.PostOnce;
import org.standclear.platform.ids.CellId;
import org.standclear.platform.security.Role;
import org.standclear.platform.security.SignedInPerson;

/** The short form: cell, class, one sentence, send. Sent without a name, nothing that names the sender is passed on. */
@Controller
class NearMissPages {

    static final int LONGEST_SENTENCE = 300;

    private static final String RECEIPTS = "/incidents/receipts";

    private final IncidentReports reports;
    private final Incidents incidents;
    private final IncidentChoices choices;
    private final PostOnce once;

    NearMissPages(IncidentReports reports, Incidents incidents, IncidentChoices choices, PostOnce once) {
        this.reports = reports;
        this.incidents = incidents;
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
        typed.put("receipt", reports.newReceipt());
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
        AtomicReference<@Nullable String> fresh = new AtomicReference<>();
        Optional<String> next = fields.fit()
                ? once.runPatiently(
                        typed.get("formToken"),
                        () -> sent(Report.brief(cell.get(), kind.get(), sentence, teller(typed, me)), fields, fresh))
                : Optional.empty();
        if (next.isPresent()) {
            return "redirect:" + (next.get().equals(RECEIPTS) ? receiptPage(typed, fresh.get()) : next.get());
        }
        response.setStatus(HttpStatus.UNPROCESSABLE_CONTENT.value());
        return page(typed, fields.errors(), me, model);
    }

    /**
     * Where to go next, as it is kept with the form's token. Without a name that is the page that asks for a receipt: a kept
     * receipt would tie the report to the session that the form was sent from.
     */
    private @Nullable String sent(Report report, IncidentFields fields, AtomicReference<@Nullable String> fresh) {
        Reported reported = reports.report(report);
        if (reported instanceof Reported.Refused refused) {
            fields.refuse(refused.field(), refused.says());
            return null;
        }
        Reported.Kept kept = (Reported.Kept) reported;
        fresh.set(kept.receipt());
        return kept.receipt() == null ? "/incidents/" + kept.incident() : RECEIPTS;
    }

    /** The page of the receipt: the fresh one, or when the form came a second time, the one that it carries. */
    private String receiptPage(Map<String, String> typed, @Nullable String fresh) {
        String receipt = fresh == null ? typed.getOrDefault("receipt", "") : fresh;
        return incidents.byReceipt(receipt).isPresent()
                ? RECEIPTS + "/" + receipt.replaceAll("[^A-Za-z0-9-]", "")
                : RECEIPTS;
    }

    private static Teller teller(Map<String, String> typed, SignedInPerson me) {
        String receipt = typed.get("receipt");
        if (me.is(Role.BENCH)) {
            return new Teller.AtScreen(me.id(), receipt);
        }
        return "no".equals(typed.get("signed"))
                ? new Teller.Anonymous(receipt)
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
