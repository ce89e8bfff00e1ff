package org.standclear.check.web;

import java.time.Instant;
import java.time.format.DateTimeParseException;
import java.util.ArrayList;
import java.util.List;
import org.jspecify.annotations.Nullable;
import org.springframework.security.core.annotation.AuthenticationPrincipal;
import org.springframework.stereotype.Controller;
import org.springframework.ui.Model;
import org.springframework.web.bind.annotation.GetMapping;
import org.springframework.web.bind.annotation.PathVariable;
import org.springframework.web.bind.annotation.RequestParam;
import org.standclear.cell.Cells;
import org.standclear.check.AnswerBrief;
import org.standclear.check.ProgramChecks;
import org.standclear.platform.ids.Id;
import org.standclear.platform.ids.ProgramId;
import org.standclear.platform.security.SignedInPerson;
import org.standclear.platform.web.NotFoundException;
import org.standclear.program.Programs;
import org.standclear.program.Revision;
import org.standclear.program.RevisionChanges;

/** A person's programs, and one program with its revisions and what the check answered. */
@Controller
class ProgramPages {

    private static final int PAGE_SIZE = 20;
    private static final int COMPARED = 30;

    private final Programs programs;
    private final ProgramChecks checks;
    private final Cells cells;
    private final RevisionChanges changes;

    ProgramPages(Programs programs, ProgramChecks checks, Cells cells, RevisionChanges changes) {
        this.changes = changes;
        this.programs = programs;
        this.checks = checks;
        this.cells = cells;
    }

    @GetMapping("/programs")
    String list(
            @RequestParam @Nullable String whose,
            @RequestParam @Nullable String after,
            @AuthenticationPrincipal SignedInPerson me,
            Model model) {
        boolean all = "all".equals(whose) && me.isLabStaff();
        Programs.Page page = programs.page(new Programs.PageRequest(all ? null : me.id(), position(after), PAGE_SIZE));
        model.addAttribute(
                "rows",
                page.revisions().stream().map(revision -> row(revision, null)).toList());
        model.addAttribute("all", all);
        model.addAttribute("staff", me.isLabStaff());
        model.addAttribute("first", after == null);
        model.addAttribute("next", next(page.next(), all));
        return "program/list";
    }

    private static @Nullable String next(Programs.@Nullable Position next, boolean all) {
        return next == null
                ? null
                : "/programs?" + (all ? "whose=all&" : "") + "after=" + next.changedAt() + "_" + next.program();
    }

    private static Programs.@Nullable Position position(@Nullable String after) {
        if (after == null || !after.contains("_")) {
            return null;
        }
        try {
            int cut = after.indexOf('_');
            return new Programs.Position(Instant.parse(after.substring(0, cut)), Id.parse(after.substring(cut + 1)));
        } catch (DateTimeParseException | IllegalArgumentException notAPosition) {
            return null;
        }
    }

    @GetMapping("/programs/{program}")
    String show(
            @PathVariable ProgramId program,
            @RequestParam @Nullable String unchanged,
            @AuthenticationPrincipal SignedInPerson me,
            Model model) {
        List<Revision> revisions = programs.revisionsFor(me.id(), program);
        if (revisions.isEmpty()) {
            throw new NotFoundException("program");
        }
        model.addAttribute("program", revisions.get(0));
        model.addAttribute("rows", rows(revisions));
        model.addAttribute("unchanged", unchanged != null);
        model.addAttribute("mine", revisions.get(0).author().equals(me.id()));
        return "program/show";
    }

    /** With what each changed; of very many revisions only the latest are compared. */
    private List<RevisionRow> rows(List<Revision> revisions) {
        List<RevisionRow> rows = new ArrayList<>();
        for (Revision revision : revisions) {
            boolean compares = rows.size() < COMPARED;
            DifferenceView difference = compares
                    ? changes.since(revision)
                            .map(since -> DifferenceView.of(since, null))
                            .orElse(null)
                    : null;
            rows.add(row(revision, difference));
        }
        return rows;
    }

    private RevisionRow row(Revision revision, @Nullable DifferenceView difference) {
        return new RevisionRow(
                revision,
                difference,
                checks.briefFor(revision.id()).stream().map(this::answer).toList());
    }

    private AnswerRow answer(AnswerBrief answer) {
        return cells.find(answer.cell())
                .map(cell -> new AnswerRow(
                        answer,
                        AnswerViews.words(answer.verdict()),
                        cell.name(),
                        cell.currentVersion() != answer.cellVersion()))
                .orElseThrow(() -> new IllegalStateException("an answer without its cell"));
    }

    /**
     * A revision and what the check answered about it, latest first.
     *
     * @param difference what it changed; null for a first one and where it is not asked
     */
    record RevisionRow(Revision revision, @Nullable DifferenceView difference, List<AnswerRow> answers) {}

    /**
     * An answer in a list.
     *
     * @param overtaken whether the cell has another version by now
     */
    record AnswerRow(AnswerBrief answer, String state, String cell, boolean overtaken) {}
}
