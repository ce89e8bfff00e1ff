package org.standclear.cell.web;

import jakarta.servlet.http.HttpServletResponse;
import java.time.LocalDate;
import java.time.format.DateTimeParseException;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
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
import org.standclear.cell.Cells;
import org.standclear.cell.DutyDue;
import org.standclear.cell.RecurringDuties;
import org.standclear.cell.RecurringDuties.Kept;
import org.standclear.cell.RecurringDuties.RecordDuty;
import org.standclear.cell.RecurringDuty;
import org.standclear.platform.forms.PostOnce;
import org.standclear.platform.ids.CellId;
import org.standclear.platform.security.Role;
import org.standclear.platform.security.SignedInPerson;
import org.standclear.platform.time.LabTime;
import org.standclear.platform.web.NotFoundException;

/** Inspections and risk-assessment reviews of a cell: when due, what was done, how often. */
@Controller
class RecurringPages {

    private static final int LONGEST_INTERVAL = 3660;

    private final Cells cells;
    private final RecurringDuties duties;
    private final DutyLines lines;
    private final PostOnce postOnce;
    private final LabTime labTime;

    RecurringPages(Cells cells, RecurringDuties duties, DutyLines lines, PostOnce postOnce, LabTime labTime) {
        this.cells = cells;
        this.duties = duties;
        this.lines = lines;
        this.postOnce = postOnce;
        this.labTime = labTime;
    }

    /** Either form of the page as it was sent. */
    record DutyForm(
            @Nullable String formToken,
            @Nullable String duty,
            @Nullable String on,
            @Nullable String doneBy,
            @Nullable String found,
            @Nullable String days,
            @Nullable String reason) {

        static DutyForm empty() {
            return new DutyForm(null, null, null, null, null, null, null);
        }

        Optional<RecurringDuty> which(FormErrors errors, String field) {
            Optional<RecurringDuty> found = RecurringDuty.of(duty == null ? "" : duty);
            if (found.isEmpty()) {
                errors.add(field, "Choose inspection or risk-assessment review.");
            }
            return found;
        }
    }

    @GetMapping("/cells/{cell}/duties")
    String show(@PathVariable CellId cell, @AuthenticationPrincipal SignedInPerson me, Model model) {
        return page(found(cell), DutyForm.empty(), new FormErrors(), me, model);
    }

    @PostMapping("/cells/{cell}/duties")
    String record(
            @PathVariable CellId cell,
            @ModelAttribute DutyForm form,
            @AuthenticationPrincipal SignedInPerson me,
            HttpServletResponse response,
            Model model) {
        Cell found = found(cell);
        FormErrors errors = new FormErrors();
        Optional<RecurringDuty> duty = form.which(errors, "duty");
        LocalDate on = date(form.on(), errors);
        String doneBy = TextField.read(errors, "doneBy", form.doneBy(), 200, "Name the person who did it.");
        String words = TextField.read(errors, "found", form.found(), 1000, "Say what was found.");
        if (!errors.any()) {
            AtomicReference<Kept.@Nullable Refused> refused = new AtomicReference<>();
            Optional<String> next = postOnce.run(form.formToken(), () -> {
                Kept kept = duties.record(new RecordDuty(cell, duty.orElseThrow(), on, doneBy, words, me.id()));
                if (kept instanceof Kept.Refused no) {
                    refused.set(no);
                    return null;
                }
                return address(cell);
            });
            if (next.isPresent()) {
                return "redirect:" + next.get();
            }
            Kept.Refused no = refused.get();
            errors.add(no == null ? "" : no.field(), no == null ? "Send it again." : no.says());
        }
        response.setStatus(HttpStatus.UNPROCESSABLE_CONTENT.value());
        return page(found, form, errors, me, model);
    }

    private static LocalDate date(@Nullable String typed, FormErrors errors) {
        try {
            return LocalDate.parse(typed == null ? "" : typed.strip());
        } catch (DateTimeParseException notADay) {
            errors.add("on", "Write the day as 2026-11-26.");
            return LocalDate.EPOCH;
        }
    }

    @PostMapping("/cells/{cell}/duties/interval")
    String interval(
            @PathVariable CellId cell,
            @ModelAttribute DutyForm form,
            @AuthenticationPrincipal SignedInPerson me,
            HttpServletResponse response,
            Model model) {
        Cell found = found(cell);
        FormErrors errors = new FormErrors();
        Optional<RecurringDuty> duty = form.which(errors, "duty");
        String typed = form.days() == null ? "" : form.days().strip();
        int days = typed.matches("[0-9]{1,4}") ? Integer.parseInt(typed) : 0;
        if (days < 1 || days > LONGEST_INTERVAL) {
            errors.add("days", "Write a whole number of days from 1 to " + LONGEST_INTERVAL + ".");
        }
        String reason = TextField.read(errors, "reason", form.reason(), 400, "Say what the interval rests on.");
        if (errors.any()) {
            response.setStatus(HttpStatus.UNPROCESSABLE_CONTENT.value());
            return page(found, form, errors, me, model);
        }
        return "redirect:"
                + postOnce.run(form.formToken(), () -> {
                            duties.setInterval(cell, duty.orElseThrow(), days, reason, me.id());
                            return address(cell);
                        })
                        .orElse(address(cell));
    }

    private String page(Cell cell, DutyForm form, FormErrors errors, SignedInPerson me, Model model) {
        List<DutyDue> due = duties.due(cell.id());
        Map<String, String> choices = new LinkedHashMap<>();
        for (RecurringDuty duty : RecurringDuty.values()) {
            choices.put(duty.code(), duty.words());
        }
        model.addAttribute("cell", cell);
        model.addAttribute("headline", headline(cell, due));
        model.addAttribute("lines", lines.due(cell.id()));
        model.addAttribute("done", duties.done(cell.id()));
        model.addAttribute("intervals", duties.intervals(cell.id()));
        model.addAttribute("choices", choices);
        model.addAttribute("form", form);
        model.addAttribute("errors", errors.all());
        model.addAttribute("instructor", me.is(Role.INSTRUCTOR));
        return "cell/duties";
    }

    private String headline(Cell cell, List<DutyDue> due) {
        LocalDate today = labTime.today();
        Optional<DutyDue> late = due.stream().filter(one -> one.overdue(today)).findFirst();
        if (late.isPresent()) {
            return "Not released: the " + late.get().duty().words() + " of " + cell.name() + " is overdue.";
        }
        return due.isEmpty()
                ? "No interval is set for " + cell.name() + " yet."
                : "Nothing is overdue on " + cell.name() + ".";
    }

    private static String address(CellId cell) {
        return "/cells/" + cell + "/duties";
    }

    private Cell found(CellId id) {
        return cells.find(id).orElseThrow(() -> new NotFoundException("cell"));
    }
}
