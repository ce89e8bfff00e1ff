package org.standclear.cell.web;

import jakarta.servlet.http.HttpServletResponse;
import java.util.Collections;
import java.util.LinkedHashMap;
import java.util.Map;
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
import org.standclear.cell.CellStates;
import org.standclear.cell.CellStates.StopCell;
import org.standclear.cell.CellTag;
import org.standclear.cell.Cells;
import org.standclear.platform.forms.PostOnce;
import org.standclear.platform.ids.CellId;
import org.standclear.platform.security.SignedInPerson;
import org.standclear.platform.web.NotFoundException;

/** Anyone signed in stops a cell with a reason, people of other labs too: they may stand at it. */
@Controller
class StopPages {

    private static final Map<String, String> KINDS = kinds(true);
    private static final Map<String, String> OF_ANYBODY = kinds(false);

    private final Cells cells;
    private final CellStates states;
    private final PostOnce postOnce;

    StopPages(Cells cells, CellStates states, PostOnce postOnce) {
        this.cells = cells;
        this.states = states;
        this.postOnce = postOnce;
    }

    @GetMapping("/cells/{cell}/stop")
    String form(@PathVariable CellId cell, @AuthenticationPrincipal SignedInPerson me, Model model) {
        return page(found(cell), me, new StopForm(null, null, null), new FormErrors(), model);
    }

    @PostMapping("/cells/{cell}/stop")
    String stop(
            @PathVariable CellId cell,
            @ModelAttribute StopForm form,
            @AuthenticationPrincipal SignedInPerson me,
            HttpServletResponse response,
            Model model) {
        Cell found = found(cell);
        FormErrors errors = new FormErrors();
        CellTag.Kind kind = form.kindRead(me.hasAPart(), errors);
        String reason = TextField.read(
                errors, "reason", form.reason(), 1000, "Say in a sentence what is the matter; others will read it.");
        if (errors.any()) {
            response.setStatus(HttpStatus.UNPROCESSABLE_CONTENT.value());
            return page(found, me, form, errors, model);
        }
        // who stands there may have no part in the cell's lab: the bench is what they may see of it
        String next = (me.hasAPart() ? "/cells/" : "/bench/") + cell;
        return "redirect:"
                + postOnce.run(form.formToken(), () -> {
                            states.stop(new StopCell(cell, kind, me.id(), reason, null));
                            return next;
                        })
                        .orElse(next);
    }

    private static String page(Cell cell, SignedInPerson me, StopForm form, FormErrors errors, Model model) {
        model.addAttribute("cell", cell);
        model.addAttribute("kinds", me.hasAPart() ? KINDS : OF_ANYBODY);
        model.addAttribute("stranger", !me.hasAPart());
        model.addAttribute("form", form);
        model.addAttribute("errors", errors.all());
        return "cell/stop";
    }

    private static Map<String, String> kinds(boolean ofTheLab) {
        Map<String, String> kinds = new LinkedHashMap<>();
        kinds.put("out-of-service", "Out of service: something is broken, worn or missing");
        kinds.put("hold", "Hold: somebody has to look first");
        if (ofTheLab) {
            kinds.put("test", "Under test: staff try it out, and nobody runs meanwhile");
        }
        return Collections.unmodifiableMap(kinds);
    }

    private Cell found(CellId id) {
        return cells.find(id).orElseThrow(() -> new NotFoundException("cell"));
    }

    /** A stop as it was typed. */
    record StopForm(
            @Nullable String formToken,
            @Nullable String kind,
            @Nullable String reason) {

        CellTag.Kind kindRead(boolean ofTheLab, FormErrors errors) {
            if ("hold".equals(kind)) {
                return CellTag.Kind.HOLD;
            }
            if (ofTheLab && "test".equals(kind)) {
                return CellTag.Kind.TEST;
            }
            if (!"out-of-service".equals(kind)) {
                errors.add(
                        "kind",
                        ofTheLab
                                ? "Choose a hold, a test or an out-of-service tag."
                                : "Choose a hold or an out-of-service tag.");
            }
            return CellTag.Kind.OUT_OF_SERVICE;
        }
    }
}
