package org.standclear.report.web;

import jakarta.servlet.http.HttpServletResponse;
import java.io.IOException;
import java.util.Map;
import org.apache.commons.csv.CSVFormat;
import org.apache.commons.csv.CSVPrinter;
import org.springframework.http.HttpStatus;
import org.springframework.stereotype.Controller;
import org.springframework.ui.Model;
import org.springframework.web.bind.annotation.GetMapping;
import org.springframework.web.bind.annotation.RequestParam;
import org.standclear.platform.time.LabTime;
import org.standclear.platform.web.NotFoundException;
import org.standclear.platform.web.TableFile;

/** The term report as a page, as a paper and as a table. */
@Controller
class TermPages {

    private final TermViews views;
    private final Papers papers;
    private final LabTime labTime;

    TermPages(TermViews views, Papers papers, LabTime labTime) {
        this.views = views;
        this.papers = papers;
        this.labTime = labTime;
    }

    @GetMapping("/report")
    String report(@RequestParam Map<String, String> parameters, HttpServletResponse response, Model model) {
        ReportForm form = ReportForm.of(parameters, labTime.today());
        Map<String, String> errors = form.errors();
        model.addAttribute("form", form);
        model.addAttribute("errors", errors);
        if (errors.isEmpty()) {
            model.addAttribute("view", views.of(form.span(), form.withNames()));
        } else {
            response.setStatus(HttpStatus.UNPROCESSABLE_CONTENT.value());
        }
        return "report/term";
    }

    @GetMapping("/report/term.pdf")
    void paper(@RequestParam Map<String, String> parameters, HttpServletResponse response) throws IOException {
        TermView view = view(parameters);
        papers.send("report/term-paper", Map.of("view", view), "term-" + view.first() + ".pdf", response);
    }

    @GetMapping("/report/term.csv")
    void table(@RequestParam Map<String, String> parameters, HttpServletResponse response) throws IOException {
        TermView view = view(parameters);
        try (CSVPrinter csv =
                new CSVPrinter(TableFile.begin(response, "term-" + view.first() + ".csv"), CSVFormat.RFC4180)) {
            TermTable.write(view, csv);
        }
    }

    private TermView view(Map<String, String> parameters) {
        ReportForm form = ReportForm.of(parameters, labTime.today());
        if (!form.errors().isEmpty()) {
            throw new NotFoundException("report");
        }
        return views.of(form.span(), form.withNames());
    }
}
