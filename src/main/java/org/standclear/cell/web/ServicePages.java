package org.standclear.cell.web;

import jakarta.servlet.http.HttpServletResponse;
import java.time.Clock;
import java.util.List;
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
import org.standclear.cell.CellStates;
import org.standclear.cell.CellTag;
import org.standclear.cell.Cells;
import org.standclear.cell.DayTests;
import org.standclear.cell.ToolReading;
import org.standclear.cell.ToolReadings;
import org.standclear.platform.forms.PostOnce;
import org.standclear.platform.ids.CellId;
import org.standclear.platform.ids.PersonId;
import org.standclear.platform.security.SignedInPerson;
import org.standclear.platform.web.NotFoundException;

/** Staff put a stopped cell back into service, and instructors restrict who attends at it. */
@Controller
class ServicePages {

    private final Cells cells;
    private final CellStates states;
    private final DayTests dayTests;
    private final ToolReadings readings;
    private final PostOnce postOnce;
    private final Clock clock;

    ServicePages(
            Cells cells, CellStates states, DayTests dayTests, ToolReadings readings, PostOnce postOnce, Clock clock) {
        this.cells = cells;
        this.states = states;
        this.dayTests = dayTests;
        this.readings = readings;
        this.postOnce = postOnce;
        this.clock = clock;
    }

    @GetMapping("/cells/{cell}/return")
    String returnForm(@PathVariable CellId cell, Model model) {
        return returnPage(found(cell), ReasonForm.empty(), new FormErrors(), model);
    }

    @PostMapping("/cells/{cell}/return")
    String returnToService(
            @PathVariable CellId cell,
            @ModelAttribute ReasonForm form,
            @AuthenticationPrincipal SignedInPerson me,
            HttpServletResponse response,
            Model model) {
        Cell found = found(cell);
        FormErrors errors = new FormErrors();
        String reason = TextField.read(errors, "reason", form.reason(), 1000, "Say what was mended or found.");
        if (!"true".equals(form.confirmed())) {
            errors.add("confirmed", "Confirm that the cell is as its version in force describes it.");
        }
        if (!errors.any()) {
            AtomicReference<@Nullable String> refusal = new AtomicReference<>();
            var next = postOnce.run(form.formToken(), () -> {
                if (states.returnToService(cell, me.id(), reason) instanceof CellStates.Return.Refused refused) {
                    refusal.set(refused.says());
                    return null;
                }
                return "/cells/" + cell;
            });
            if (next.isPresent()) {
                return "redirect:" + next.get();
            }
            errors.add("", String.valueOf(refusal.get()));
        }
        response.setStatus(HttpStatus.UNPROCESSABLE_CONTENT.value());
        return returnPage(found, form, errors, model);
    }

    private String returnPage(Cell cell, ReasonForm form, FormErrors errors, Model model) {
        List<CellTag> hanging = states.tags(cell.id()).stream()
                .filter(tag -> tag.hangs() && tag.kind().comesOffAtReturn())
                .toList();
        model.addAttribute("cell", cell);
        model.addAttribute("hanging", hanging);
        model.addAttribute("readers", hanging.isEmpty() ? List.of() : readers(cell));
        model.addAttribute(
                "lastTest", dayTests.latest(cell.id(), clock.instant()).orElse(null));
        model.addAttribute("form", form);
        model.addAttribute("errors", errors.all());
        return "cell/return";
    }

    /** Who has read tool and offset since the latest tag was hung; not what. */
    private List<PersonId> readers(Cell cell) {
        return readings.sinceTagged(cell.id()).stream().map(ToolReading::by).toList();
    }

    @GetMapping("/cells/{cell}/restriction")
    String restrictionForm(@PathVariable CellId cell, Model model) {
        return restrictionPage(found(cell), ReasonForm.empty(), new FormErrors(), model);
    }

    @PostMapping("/cells/{cell}/restriction")
    String restriction(
            @PathVariable CellId cell,
            @ModelAttribute ReasonForm form,
            @AuthenticationPrincipal SignedInPerson me,
            HttpServletResponse response,
            Model model) {
        Cell found = found(cell);
        FormErrors errors = new FormErrors();
        String reason = TextField.read(errors, "reason", form.reason(), 1000, "Say why; the people who book read it.");
        if (errors.any()) {
            response.setStatus(HttpStatus.UNPROCESSABLE_CONTENT.value());
            return restrictionPage(found, form, errors, model);
        }
        String next = "/cells/" + cell;
        return "redirect:"
                + postOnce.run(form.formToken(), () -> {
                            if ("lift".equals(form.act())) {
                                states.unrestrict(cell, me.id(), reason);
                            } else {
                                states.restrict(cell, me.id(), reason);
                            }
                            return next;
                        })
                        .orElse(next);
    }

    private String restrictionPage(Cell cell, ReasonForm form, FormErrors errors, Model model) {
        model.addAttribute("cell", cell);
        model.addAttribute(
                "restricted",
                states.tags(cell.id()).stream().anyMatch(tag -> tag.hangs() && tag.kind() == CellTag.Kind.RESTRICTION));
        model.addAttribute("form", form);
        model.addAttribute("errors", errors.all());
        return "cell/restriction";
    }

    private Cell found(CellId id) {
        return cells.find(id).orElseThrow(() -> new NotFoundException("cell"));
    }

    /** A reason as it was typed, and what it is for. */
    record ReasonForm(
            @Nullable String formToken,
            @Nullable String reason,
            @Nullable String confirmed,
            @Nullable String act) {

        static ReasonForm empty() {
            return new ReasonForm(null, null, null, null);
        }
    }
}
