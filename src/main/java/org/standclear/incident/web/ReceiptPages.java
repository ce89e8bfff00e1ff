package org.standclear.incident.web;

import jakarta.servlet.http.HttpServletResponse;
import java.util.Map;
import org.springframework.http.HttpStatus;
import org.springframework.stereotype.Controller;
import org.springframework.ui.Model;
import org.springframework.web.bind.annotation.GetMapping;
import org.springframework.web.bind.annotation.PathVariable;
import org.springframework.web.bind.annotation.RequestParam;
import org.standclear.incident.Incident;
import org.standclear.incident.Incidents;
import org.standclear.platform.web.NotFoundException;

/** What somebody without a name gets to hear, by their receipt. */
@Controller
class ReceiptPages {

    private final Incidents incidents;
    private final ReporterViews views;

    ReceiptPages(Incidents incidents, ReporterViews views) {
        this.incidents = incidents;
        this.views = views;
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
        model.addAttribute("view", views.of(incident));
        model.addAttribute("receipt", receipt);
        model.addAttribute("photos", java.util.List.of());
        model.addAttribute("errors", Map.of());
        return "incident/mine";
    }
}
