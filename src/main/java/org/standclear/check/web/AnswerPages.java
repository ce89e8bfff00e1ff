package org.standclear.check.web;

import java.nio.charset.StandardCharsets;
import java.util.List;
import java.util.Map;
import org.jspecify.annotations.Nullable;
import org.springframework.http.ContentDisposition;
import org.springframework.http.HttpHeaders;
import org.springframework.http.MediaType;
import org.springframework.http.ResponseEntity;
import org.springframework.security.core.annotation.AuthenticationPrincipal;
import org.springframework.stereotype.Controller;
import org.springframework.ui.Model;
import org.springframework.web.bind.annotation.GetMapping;
import org.springframework.web.bind.annotation.PathVariable;
import org.springframework.web.bind.annotation.ResponseBody;
import org.standclear.cell.Cell;
import org.standclear.cell.Cells;
import org.standclear.check.AnswerBrief;
import org.standclear.check.AnswerUses;
import org.standclear.check.Pictures;
import org.standclear.check.ProgramChecks;
import org.standclear.check.StoredAnswer;
import org.standclear.platform.ids.AnswerId;
import org.standclear.platform.ids.RevisionId;
import org.standclear.platform.security.SignedInPerson;
import org.standclear.platform.web.NotFoundException;
import org.standclear.program.Programs;
import org.standclear.program.Revision;
import org.standclear.program.RevisionChanges;

/** One answer: what it says, what it rests on, and the text it is about. */
@Controller
class AnswerPages {

    private final ProgramChecks checks;
    private final Programs programs;
    private final Cells cells;
    private final Pictures pictures;
    private final RevisionChanges changes;
    private final AnswerUses uses;

    AnswerPages(
            ProgramChecks checks,
            Programs programs,
            Cells cells,
            Pictures pictures,
            RevisionChanges changes,
            AnswerUses uses) {
        this.pictures = pictures;
        this.changes = changes;
        this.uses = uses;
        this.checks = checks;
        this.programs = programs;
        this.cells = cells;
    }

    @GetMapping("/checks/{answer}")
    String show(@PathVariable AnswerId answer, @AuthenticationPrincipal SignedInPerson me, Model model) {
        AnswerBrief found = checks.brief(answer).orElseThrow(AnswerPages::notFound);
        Revision revision = revision(found.revision(), me);
        Cell cell = cells.find(found.cell()).orElseThrow(AnswerPages::notFound);
        String text = new String(programs.bytes(revision.id()), StandardCharsets.UTF_8);
        model.addAttribute(
                "view",
                AnswerViews.of(
                        found, checks.details(answer).orElseThrow(AnswerPages::notFound), revision.title(), text));
        model.addAttribute("answer", found);
        model.addAttribute("uses", me.isLabStaff() ? uses.of(answer) : List.of());
        model.addAttribute("pictures", pictures.of(found).orElse(null));
        model.addAttribute("difference", difference(revision, found));
        model.addAttribute("revision", revision);
        model.addAttribute("cell", cell);
        model.addAttribute("overtaken", cell.currentVersion() != found.cellVersion());
        model.addAttribute("mine", revision.author().equals(me.id()));
        return "check/answer";
    }

    private @Nullable DifferenceView difference(Revision revision, AnswerBrief answer) {
        return changes.since(revision)
                .map(since -> DifferenceView.of(since, before(since.before(), answer)))
                .orElse(null);
    }

    /** What the check answered last about the revision before, on the same cell. */
    private DifferenceView.@Nullable Before before(Revision before, AnswerBrief answer) {
        return checks.briefFor(before.id()).stream()
                .filter(one -> one.cell().equals(answer.cell()))
                .findFirst()
                .map(one -> new DifferenceView.Before(
                        "/checks/" + one.id(),
                        one.verdict().mark(),
                        one.verdict().words() + " on version " + one.cellVersion()))
                .orElse(null);
    }

    @GetMapping("/checks/{answer}/answer.json")
    ResponseEntity<byte[]> json(@PathVariable AnswerId answer, @AuthenticationPrincipal SignedInPerson me) {
        StoredAnswer found = checks.find(answer).orElseThrow(AnswerPages::notFound);
        Revision revision = revision(found.revision(), me);
        String name = "answer-" + revision.fingerprintEnd() + "-v" + found.cellVersion() + ".json";
        return ResponseEntity.ok()
                .contentType(MediaType.APPLICATION_JSON)
                .header(
                        HttpHeaders.CONTENT_DISPOSITION,
                        ContentDisposition.attachment().filename(name).build().toString())
                .body(found.json().getBytes(StandardCharsets.UTF_8));
    }

    /** The pass as moments, for play-back on the answer's page. */
    @GetMapping(path = "/checks/{answer}/play.json", produces = MediaType.APPLICATION_JSON_VALUE)
    @ResponseBody
    Map<String, @Nullable Object> play(@PathVariable AnswerId answer, @AuthenticationPrincipal SignedInPerson me) {
        AnswerBrief found = checks.brief(answer).orElseThrow(AnswerPages::notFound);
        revision(found.revision(), me);
        return pictures.of(found).orElseThrow(AnswerPages::notFound).play();
    }

    /** An answer is seen by those who may see what it is about. */
    private Revision revision(RevisionId revision, SignedInPerson me) {
        return programs.findFor(me.id(), revision).orElseThrow(AnswerPages::notFound);
    }

    private static NotFoundException notFound() {
        return new NotFoundException("answer");
    }
}
