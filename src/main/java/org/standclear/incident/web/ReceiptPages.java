package org.standclear.incident.web;

import jakarta.servlet.http.HttpServletResponse;
import java.util.Map;
import java.util.Set;
import java.util.UUID;
import org.springframework.http.HttpStatus;
import org.springframework.stereotype.Controller;
import org.springframework.ui.Model;
import org.springframework.web.bind.annotation.GetMapping;
import org.springframework.web.bind.annotation.PathVariable;
import org.springframework.web.bind.annotation.RequestParam;
import org.standclear.incident.Incident;
import org.standclear.incident.Incidents;
import org.standclear.platform.lab.Lab;
import org.standclear.platform.lab.LabOwners;
import org.standclear.platform.lab.LabScope;
import org.standclear.platform.lab.Labs;
import org.standclear.platform.web.NotFoundException;

/** What somebody without a name gets to hear, by their receipt. */
@Controller
class ReceiptPages {

    private final Incidents incidents;
    private final ReporterViews views;
    private final LabOwners owners;
    private final Labs labs;

    ReceiptPages(Incidents incidents, ReporterViews views, LabOwners owners, Labs labs) {
        this.incidents = incidents;
        this.views = views;
        this.owners = owners;
        this.labs = labs;
    }

    @GetMapping("/incidents/receipts")
    String ask(@RequestParam(defaultValue = "") String receipt, HttpServletResponse response, Model model) {
        String code = receipt.strip();
        if (code.isEmpty()) {
            return form(code, Map.of(), model);
        }
        if (incidents.byReceipt(code).isPresent()) {
            return "redirect:/incidents/receipts/" + code.replaceAll("[^A-Za-z0-9-]", "");
        }
        response.setStatus(HttpStatus.UNPROCESSABLE_CONTENT.value());
        return form(
                code,
                Map.of("receipt", "No report has this receipt. It is three groups of four letters and figures."),
                model);
    }

    private static String form(String receipt, Map<String, String> errors, Model model) {
        model.addAttribute("receipt", receipt.length() > 40 ? receipt.substring(0, 40) : receipt);
        model.addAttribute("errors", errors);
        return "incident/receipts";
    }

    @GetMapping("/incidents/receipts/{receipt}")
    String show(@PathVariable String receipt, Model model) {
        Incident incident = incidents.byReceipt(receipt).orElseThrow(() -> new NotFoundException("receipt"));
        // whoever has the receipt may be at work in another lab: clock, cell and numbers are the incident's
        Lab lab = labOf(incident);
        model.addAttribute("view", LabScope.in(lab.id(), () -> views.of(incident)));
        model.addAttribute("hurtLab", lab);
        model.addAttribute("receipt", receipt);
        model.addAttribute("photos", java.util.List.of());
        model.addAttribute("errors", Map.of());
        return "incident/mine";
    }

    private Lab labOf(Incident incident) {
        UUID id = incident.id().value();
        return owners.of(Set.of(id)).getOrDefault(id, Set.of()).stream()
                .flatMap(lab -> labs.find(lab).stream())
                .findFirst()
                .orElseThrow(() -> new NotFoundException("receipt"));
    }
}
