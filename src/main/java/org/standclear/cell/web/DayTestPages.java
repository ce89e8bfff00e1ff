package org.standclear.cell.web;

import jakarta.servlet.http.HttpServletResponse;
import java.util.Optional;
import org.springframework.http.HttpStatus;
import org.springframework.security.core.annotation.AuthenticationPrincipal;
import org.springframework.stereotype.Controller;
import org.springframework.ui.Model;
import org.springframework.web.bind.annotation.GetMapping;
import org.springframework.web.bind.annotation.ModelAttribute;
import org.springframework.web.bind.annotation.PathVariable;
import org.springframework.web.bind.annotation.PostMapping;
import org.standclear.cell.Cell;
import org.standclear.cell.Cells;
import org.standclear.cell.DayTestReadings;
import org.standclear.cell.DayTests;
import org.standclear.platform.forms.PostOnce;
import org.standclear.platform.ids.CellId;
import org.standclear.platform.security.SignedInPerson;
import org.standclear.platform.web.NotFoundException;

/** The day test: acts done and values read at the cell, compared with the version in force. */
@Controller
class DayTestPages {

    private final Cells cells;

    private final DayTests dayTests;
    private final PostOnce postOnce;

    DayTestPages(Cells cells, DayTests dayTests, PostOnce postOnce) {
        this.cells = cells;

        this.dayTests = dayTests;
        this.postOnce = postOnce;
    }

    @GetMapping("/cells/{cell}/day-test")
    String form(@PathVariable CellId cell, Model model) {
        return page(found(cell), DayTestForm.empty(), new FormErrors(), model);
    }

    @PostMapping("/cells/{cell}/day-test")
    String record(
            @PathVariable CellId cell,
            @ModelAttribute DayTestForm form,
            @AuthenticationPrincipal SignedInPerson me,
            HttpServletResponse response,
            Model model) {
        Cell tested = found(cell);
        FormErrors errors = new FormErrors();
        Optional<DayTestReadings> readings = form.readings(errors);
        String why = readings.isEmpty() ? "" : sameStation(cell, form, readings.get(), errors);
        if (readings.isEmpty() || errors.any()) {
            response.setStatus(HttpStatus.UNPROCESSABLE_CONTENT.value());
            return page(tested, form, errors, model);
        }
        String next = "/cells/" + cell;
        return "redirect:"
                + postOnce.run(form.formToken(), () -> {
                            dayTests.record(cell, me.id(), readings.get(), why);
                            return next;
                        })
                        .orElse(next);
    }

    /** The stations take turns: the one of last time again needs a reason, which is returned. */
    private String sameStation(CellId cell, DayTestForm form, DayTestReadings readings, FormErrors errors) {
        if (dayTests.lastOn(cell, readings.stopStation()).isEmpty()) {
            return "";
        }
        String reason = form.stationReason() == null ? "" : form.stationReason().strip();
        if (reason.isEmpty()) {
            errors.add(
                    "stopStation",
                    "That e-stop was pressed last time too. Press another one, or say below why it is the same.");
            return "";
        }
        return TextField.read(errors, "stationReason", reason, 200, "Say why.");
    }

    private String page(Cell cell, DayTestForm form, FormErrors errors, Model model) {
        // what the cell file says is not shown here: it would be copied instead of read
        model.addAttribute("cell", cell);

        model.addAttribute(
                "lastStation",
                dayTests.recent(cell.id(), 1).stream()
                        .findFirst()
                        .map(last -> "Last time it was: " + last.readings().stopStation() + ". Take another one.")
                        .orElse(null));
        model.addAttribute("form", form);
        model.addAttribute("errors", errors.all());
        return "cell/day-test";
    }

    private Cell found(CellId id) {
        return cells.find(id).orElseThrow(() -> new NotFoundException("cell"));
    }
}
