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

/** Anyone signed in stops a cell with a reason. */
@Controller
class StopPages {

    private static final Map<String, String> KINDS = kinds();

    private final Cells cells;
    private final CellStates states;
    private final PostOnce postOnce;

    StopPages(Cells cells, CellStates states, PostOnce postOnce) {
        this.cells = cells;
        this.states = states;
        this.postOnce = postOnce;
    }

    @GetMapping("/cells/{cell}/stop")
    String form(@PathVariable CellId cell, Model model) {
        return page(found(cell), new StopForm(null, null, null), new FormErrors(), model);
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
        CellTag.Kind kind = form.kindRead(errors);
        String reason = TextField.read(
                errors, "reason", form.reason(), 1000, "Say in a sentence what is the matter; others will read it.");
        if (errors.any()) {
            response.setStatus(HttpStatus.UNPROCESSABLE_CONTENT.value());
            return page(found, form, errors, model);
        }
        String next = "/cells/" + cell;
        return "redirect:"
                + postOnce.run(form.formToken(), () -> {
                            states.stop(new StopCell(cell, kind, me.id(), reason, null));
                            return next;
                        })
                        .orElse(next);
    }

    private static String page(Cell cell, StopForm form, FormErrors errors, Model model) {
        model.addAttribute("cell", cell);
        model.addAttribute("kinds", KINDS);
        model.addAttribute("form", form);
        model.addAttribute("errors", errors.all());
        return "cell/stop";
    }

    private static Map<String, String> kinds() {
        Map<String, String> kinds = new LinkedHashMap<>();
        kinds.put("out-of-service", "Out of service: something is broken, worn or missing");
        kinds.put("hold", "Hold: somebody has to look first");
        kinds.put("test", "Under test: staff try it out, and nobody runs meanwhile");
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

        CellTag.Kind kindRead(FormErrors errors) {
            if ("hold".equals(kind)) {
                return CellTag.Kind.HOLD;
            }
            if ("test".equals(kind)) {
                return CellTag.Kind.TEST;
            }
            if (!"out-of-service".equals(kind)) {
                errors.add("kind", "Choose a hold, a test or an out-of-service tag.");
            }
            return CellTag.Kind.OUT_OF_SERVICE;
        }
    }
}
