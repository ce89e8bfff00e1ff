package org.standclear.cell.web;

import jakarta.servlet.http.HttpServletResponse;
import java.util.concurrent.atomic.AtomicReference;
import org.jspecify.annotations.Nullable;
import org.springframework.http.HttpStatus;
import org.springframework.security.core.annotation.AuthenticationPrincipal;
import org.springframework.stereotype.Controller;
import org.springframework.ui.Model;
import org.springframework.web.bind.annotation.GetMapping;
import org.springframework.web.bind.annotation.ModelAttribute;
import org.springframework.web.bind.annotation.PathVariable;
import org.springframework.web.bind.annotation.PostMapping;
import org.standclear.cell.Cell;
import org.standclear.cell.CellRegister;
import org.standclear.cell.CellRegister.NewProposal;
import org.standclear.cell.CellRegister.Proposed;
import org.standclear.cell.Cells;
import org.standclear.platform.forms.PostOnce;
import org.standclear.platform.ids.CellId;
import org.standclear.platform.security.SignedInPerson;
import org.standclear.platform.web.NotFoundException;

/** Staff propose a new cell or the next version of one, as a cell file. */
@Controller
class ProposePages {

    private final Cells cells;
    private final CellRegister register;
    private final PostOnce postOnce;

    ProposePages(Cells cells, CellRegister register, PostOnce postOnce) {
        this.cells = cells;
        this.register = register;
        this.postOnce = postOnce;
    }

    @GetMapping("/cells/new")
    String newCell(Model model) {
        return page(null, ProposeForm.empty(), new FormErrors(), model);
    }

    @PostMapping("/cells/new")
    String proposeCell(
            @ModelAttribute ProposeForm form,
            @AuthenticationPrincipal SignedInPerson me,
            HttpServletResponse response,
            Model model) {
        return propose(null, form, me, response, model);
    }

    @GetMapping("/cells/{cell}/propose")
    String nextVersion(@PathVariable CellId cell, Model model) {
        Cell found = found(cell);
        String file = cells.current(cell).file();
        return page(found, ProposeForm.empty().with(file), new FormErrors(), model);
    }

    @PostMapping("/cells/{cell}/propose")
    String proposeVersion(
            @PathVariable CellId cell,
            @ModelAttribute ProposeForm form,
            @AuthenticationPrincipal SignedInPerson me,
            HttpServletResponse response,
            Model model) {
        return propose(found(cell), form, me, response, model);
    }

    private String propose(
            @Nullable Cell cell, ProposeForm form, SignedInPerson me, HttpServletResponse response, Model model) {
        FormErrors errors = new FormErrors();
        String file = form.fileRead(errors);
        String reason = TextField.read(
                errors,
                "reason",
                form.reason(),
                1000,
                "Say why the cell changes: what was measured, decided or fitted.");
        int offset = cell == null ? form.offsetRead(errors) : cell.startOffsetMinutes();
        if (!errors.any()) {
            NewProposal proposal = new NewProposal(cell == null ? null : cell.id(), file, reason, me.id(), offset);
            AtomicReference<Proposed.@Nullable Refused> refusal = new AtomicReference<>();
            var next = postOnce.run(form.formToken(), () -> {
                Proposed proposed = register.propose(proposal);
                if (proposed instanceof Proposed.Kept kept) {
                    return "/cells/proposals/" + kept.proposal().id();
                }
                refusal.set((Proposed.Refused) proposed);
                return null;
            });
            if (next.isPresent()) {
                return "redirect:" + next.get();
            }
            Proposed.Refused refused = refusal.get();
            errors.add(refused == null ? "" : refused.field(), refused == null ? "Not kept." : refused.says());
        }
        response.setStatus(HttpStatus.UNPROCESSABLE_CONTENT.value());
        return page(cell, form.with(file), errors, model);
    }

    private String page(@Nullable Cell cell, ProposeForm form, FormErrors errors, Model model) {
        model.addAttribute("cell", cell);
        model.addAttribute("heading", cell == null ? "Propose a new cell" : heading(cell));
        model.addAttribute(
                "hint",
                cell == null
                        ? "It begins with cell-file: 1, name and version."
                        : "The file in force. Change what has to change, and the version to " + next(cell) + ".");
        model.addAttribute("form", form);
        model.addAttribute("errors", errors.all());
        return "cell/propose";
    }

    private static String heading(Cell cell) {
        return "Propose version " + next(cell) + " of " + cell.name();
    }

    private static int next(Cell cell) {
        return cell.currentVersion() + 1;
    }

    private Cell found(CellId id) {
        return cells.find(id).orElseThrow(() -> new NotFoundException("cell"));
    }
}
