package org.standclear.check.web;

import java.time.Instant;
import java.time.format.DateTimeParseException;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.function.Function;
import java.util.stream.Collectors;
import org.jspecify.annotations.Nullable;
import org.springframework.security.core.annotation.AuthenticationPrincipal;
import org.springframework.stereotype.Controller;
import org.springframework.ui.Model;
import org.springframework.web.bind.annotation.GetMapping;
import org.springframework.web.bind.annotation.PathVariable;
import org.springframework.web.bind.annotation.RequestParam;
import org.standclear.cell.Cell;
import org.standclear.cell.Cells;
import org.standclear.check.AnswerBrief;
import org.standclear.check.ProgramChecks;
import org.standclear.platform.ids.CellId;
import org.standclear.platform.ids.Id;
import org.standclear.platform.ids.ProgramId;
import org.standclear.platform.ids.RevisionId;
import org.standclear.platform.security.PrintedNames;
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
    private final PrintedNames names;

    ProgramPages(Programs programs, ProgramChecks checks, Cells cells, RevisionChanges changes, PrintedNames names) {
        this.names = names;
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
        model.addAttribute("rows", rows(page.revisions(), revision -> null));
        model.addAttribute(
                "names",
                names.knowing(page.revisions().stream().map(Revision::author).toList()));
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
        model.addAttribute("rows", rows(revisions, sinceTheOneBefore(revisions)));
        model.addAttribute("unchanged", unchanged != null);
        model.addAttribute("mine", revisions.get(0).author().equals(me.id()));
        return "program/show";
    }

    /** What each changed, latest first; of very many revisions only the latest are compared. */
    private Function<Revision, @Nullable DifferenceView> sinceTheOneBefore(List<Revision> revisions) {
        Set<RevisionId> compared =
                revisions.stream().limit(COMPARED).map(Revision::id).collect(Collectors.toSet());
        return revision -> compared.contains(revision.id())
                ? changes.since(revision)
                        .map(since -> DifferenceView.of(since, null))
                        .orElse(null)
                : null;
    }

    private List<RevisionRow> rows(List<Revision> revisions, Function<Revision, @Nullable DifferenceView> difference) {
        Map<RevisionId, List<AnswerBrief>> answers =
                checks.briefsFor(revisions.stream().map(Revision::id).toList());
        Map<CellId, Cell> known = new HashMap<>();
        cells.all().forEach(cell -> known.put(cell.id(), cell));
        return revisions.stream()
                .map(revision -> new RevisionRow(
                        revision,
                        difference.apply(revision),
                        answers.getOrDefault(revision.id(), List.of()).stream()
                                .map(answer -> answer(answer, known))
                                .toList()))
                .toList();
    }

    private AnswerRow answer(AnswerBrief answer, Map<CellId, Cell> known) {
        Cell cell = known.computeIfAbsent(
                answer.cell(),
                id -> cells.find(id).orElseThrow(() -> new IllegalStateException("an answer without its cell")));
        return new AnswerRow(
                answer,
                AnswerViews.words(answer.verdict()),
                cell.name(),
                cell.currentVersion() != answer.cellVersion());
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
