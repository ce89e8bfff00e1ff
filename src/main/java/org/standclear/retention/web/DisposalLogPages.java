package org.standclear.retention.web;

import jakarta.servlet.http.HttpServletResponse;
import java.io.IOException;
import org.apache.commons.csv.CSVFormat;
import org.apache.commons.csv.CSVPrinter;
import org.springframework.stereotype.Controller;
import org.springframework.ui.Model;
import org.springframework.web.bind.annotation.GetMapping;
import org.standclear.platform.web.TableFile;
import org.standclear.retention.Disposals;
import org.standclear.retention.Disposals.LogLine;

/** The disposal log, on a page and as a file. */
@Controller
class DisposalLogPages {

    private final Disposals disposals;
    private final DisposalViews views;

    DisposalLogPages(Disposals disposals, DisposalViews views) {
        this.disposals = disposals;
        this.views = views;
    }

    @GetMapping("/retention/log")
    String log(Model model) {
        model.addAttribute("lines", views.log(disposals.log()));
        return "retention/log";
    }

    @GetMapping("/retention/log.csv")
    void csv(HttpServletResponse response) throws IOException {
        try (CSVPrinter csv = new CSVPrinter(TableFile.begin(response, "disposal-log.csv"), CSVFormat.RFC4180)) {
            csv.printRecord(DisposalViews.COLUMNS);
            for (LogLine line : disposals.log()) {
                csv.printRecord(views.columns(line));
            }
        }
    }
}
