package org.standclear.report.web;

import jakarta.servlet.http.HttpServletResponse;
import java.io.IOException;
import java.util.Map;
import org.springframework.security.core.annotation.AuthenticationPrincipal;
import org.springframework.stereotype.Controller;
import org.springframework.ui.Model;
import org.springframework.web.bind.annotation.GetMapping;
import org.springframework.web.bind.annotation.PathVariable;
import org.springframework.web.bind.annotation.RequestParam;
import org.standclear.platform.access.AccessLog;
import org.standclear.platform.access.Sight;
import org.standclear.platform.ids.RunId;
import org.standclear.platform.security.Role;
import org.standclear.platform.security.SignedInPerson;
import org.standclear.platform.web.NotFoundException;
import org.standclear.report.OwnRecords;
import org.standclear.run.Run;
import org.standclear.run.Runs;

/** The paper of a run, for whoever sees the run. */
@Controller
class RunPaperPages {

    private final Runs runs;
    private final RunPapers runPapers;
    private final Papers papers;
    private final OwnRecords records;
    private final AccessLog looks;

    RunPaperPages(Runs runs, RunPapers runPapers, Papers papers, OwnRecords records, AccessLog looks) {
        this.runs = runs;
        this.runPapers = runPapers;
        this.papers = papers;
        this.records = records;
        this.looks = looks;
    }

    /** Everything about one run on one page; for those who work on it. */
    @GetMapping("/report/runs/{run}")
    String show(@PathVariable RunId run, @AuthenticationPrincipal SignedInPerson me, Model model) {
        Run found = runs.find(run).orElseThrow(() -> new NotFoundException("run"));
        if (!found.involves(me.id())) {
            looks.looked(
                    me.id(),
                    Sight.RUN_PAPER,
                    run.toString(),
                    found.people().stream().map(Run.Involved::person).toList());
        }
        model.addAttribute("view", runPapers.of(found, true, true));
        return "report/run-whole";
    }

    @GetMapping("/report/runs/{run}/run.pdf")
    void paper(
            @PathVariable RunId run,
            @RequestParam(defaultValue = "") String names,
            @AuthenticationPrincipal SignedInPerson me,
            HttpServletResponse response)
            throws IOException {
        Run found = runs.find(run)
                .filter(one -> me.isLabStaff() || me.is(Role.REVIEWER) || one.involves(me.id()))
                .orElseThrow(() -> new NotFoundException("run"));
        if (!names.equals("without") && !found.involves(me.id())) {
            records.printed(run, me.id());
            looks.looked(
                    me.id(),
                    Sight.RUN_PAPER,
                    run.toString(),
                    found.people().stream().map(Run.Involved::person).toList());
        }
        boolean whole = me.isLabStaff() || me.is(Role.REVIEWER);
        RunPaper paper = runPapers.of(found, !names.equals("without"), whole);
        papers.send("report/run-paper", Map.of("view", paper), "run.pdf", response);
    }
}
