package org.standclear.cell.web;

import jakarta.servlet.http.HttpServletResponse;
import java.time.Clock;
import java.util.List;
import java.util.Optional;
import org.jspecify.annotations.Nullable;
import org.springframework.http.HttpStatus;
import org.springframework.security.core.annotation.AuthenticationPrincipal;
import org.springframework.stereotype.Controller;
import org.springframework.ui.Model;
import org.springframework.web.bind.annotation.GetMapping;
import org.springframework.web.bind.annotation.ModelAttribute;
import org.springframework.web.bind.annotation.PathVariable;
import org.springframework.web.bind.annotation.PostMapping;
import org.springframework.web.servlet.mvc.support.RedirectAttributes;
import org.standclear.cell.Cell;
import org.standclear.cell.Cells;
import org.standclear.cell.ToolReading;
import org.standclear.cell.ToolReadings;
import org.standclear.platform.forms.PostOnce;
import org.standclear.platform.ids.CellId;
import org.standclear.platform.security.SignedInPerson;
import org.standclear.platform.time.SqlTime;
import org.standclear.platform.web.NotFoundException;

/** Two people read tool and offset at the robot before a cell returns; the page shows nobody's reading. */
@Controller
class ToolReadingPages {

    private final Cells cells;
    private final ToolReadings readings;
    private final PostOnce postOnce;
    private final Clock clock;

    ToolReadingPages(Cells cells, ToolReadings readings, PostOnce postOnce, Clock clock) {
        this.cells = cells;
        this.readings = readings;
        this.postOnce = postOnce;
        this.clock = clock;
    }

    @GetMapping("/cells/{cell}/tool-reading")
    String form(@PathVariable CellId cell, Model model) {
        return page(found(cell), ReadingForm.empty(), new FormErrors(), model);
    }

    @PostMapping("/cells/{cell}/tool-reading")
    String read(
            @PathVariable CellId cell,
            @ModelAttribute ReadingForm form,
            @AuthenticationPrincipal SignedInPerson me,
            RedirectAttributes flash,
            HttpServletResponse response,
            Model model) {
        Cell found = found(cell);
        FormErrors errors = new FormErrors();
        String tool = TextField.read(errors, "toolCode", form.toolCode(), 60, "Type the code on the fitted tool.");
        List<Double> offset = List.of(
                number(errors, "offsetX", form.offsetX()),
                number(errors, "offsetY", form.offsetY()),
                number(errors, "offsetZ", form.offsetZ()));
        String next = "/cells/" + cell;
        if (!errors.any()) {
            postOnce.run(form.formToken(), () -> {
                Optional<String> refusal =
                        readings.read(new ToolReading(cell, me.id(), SqlTime.stored(clock.instant()), tool, offset));
                refusal.ifPresent(says -> errors.add("", says));
                return refusal.isPresent() ? null : next;
            });
        }
        if (errors.any()) {
            response.setStatus(HttpStatus.UNPROCESSABLE_CONTENT.value());
            return page(found, form, errors, model);
        }
        flash.addFlashAttribute("told", "Your reading is kept. It is compared when the cell is put back.");
        return "redirect:" + next;
    }

    /** Digits only, so that words that Java would take for numbers are refused. */
    private static double number(FormErrors errors, String field, @Nullable String raw) {
        String typed = raw == null ? "" : raw.strip().replace(',', '.').replace('\u2212', '-');
        if (!typed.matches("-?\\d{1,4}(\\.\\d{1,3})?")) {
            errors.add(field, "Type the number as the robot shows it, in mm.");
            return 0;
        }
        // -0 and 0 are one reading
        return Double.parseDouble(typed) + 0.0;
    }

    private static String page(Cell cell, ReadingForm form, FormErrors errors, Model model) {
        model.addAttribute("cell", cell);
        model.addAttribute("form", form);
        model.addAttribute("errors", errors.all());
        return "cell/tool-reading";
    }

    private Cell found(CellId id) {
        return cells.find(id).orElseThrow(() -> new NotFoundException("cell"));
    }

    /** A reading as it was typed. */
    record ReadingForm(
            @Nullable String formToken,
            @Nullable String toolCode,
            @Nullable String offsetX,
            @Nullable String offsetY,
            @Nullable String offsetZ) {

        static ReadingForm empty() {
            return new ReadingForm(null, null, null, null, null);
        }
    }
}
