package org.standclear.check.web;

import jakarta.servlet.http.HttpServletResponse;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.concurrent.atomic.AtomicBoolean;
import org.jspecify.annotations.Nullable;
import org.springframework.http.HttpStatus;
import org.springframework.security.core.annotation.AuthenticationPrincipal;
import org.springframework.stereotype.Controller;
import org.springframework.ui.Model;
import org.springframework.web.bind.annotation.GetMapping;
import org.springframework.web.bind.annotation.ModelAttribute;
import org.springframework.web.bind.annotation.PostMapping;
import org.springframework.web.bind.annotation.RequestParam;
import org.standclear.check.ProgramChecks;
import org.standclear.check.ProgramChecks.Outcome;
import org.standclear.platform.forms.PostOnce;
import org.standclear.platform.ids.CellId;
import org.standclear.platform.ids.CourseId;
import org.standclear.platform.security.SignedInPerson;
import org.standclear.program.ProgramUploads.UploadProgram;
import org.standclear.program.ProgramUploads.Uploaded;
import org.standclear.program.Revision;

/** A program is brought or chosen and checked against a cell; no booking is needed. */
@Controller
class CheckPages {

    /** The fields in the order of the page. */
    private static final List<String> FIELDS = List.of(
            "",
            "cell",
            "course",
            "program",
            "upload",
            "pasted",
            "programTitle",
            "power",
            "overridePercent",
            "maxToolSpeed",
            "tool",
            "part",
            "partKg",
            "loop",
            "start",
            "declarationFile");

    private final CheckChoices choices;
    private final BroughtProgram brought;
    private final ProgramChecks checks;
    private final PostOnce postOnce;

    CheckPages(CheckChoices choices, BroughtProgram brought, ProgramChecks checks, PostOnce postOnce) {
        this.choices = choices;
        this.brought = brought;
        this.checks = checks;
        this.postOnce = postOnce;
    }

    @GetMapping("/check")
    String form(
            @RequestParam @Nullable String program,
            @RequestParam @Nullable String cell,
            @RequestParam @Nullable String course,
            @AuthenticationPrincipal SignedInPerson me,
            Model model) {
        String usual = course == null ? choices.usualCourse(me) : course;
        return page(ProgramForm.empty(program, cell, usual), Map.of(), me, model);
    }

    @PostMapping("/check")
    String check(
            @ModelAttribute ProgramForm form,
            @AuthenticationPrincipal SignedInPerson me,
            HttpServletResponse response,
            Model model) {
        Map<String, String> errors = new LinkedHashMap<>();
        Optional<UploadProgram> upload = brought.upload(form, me, errors);
        Optional<CellId> cell = choices.cell(form.cell());
        if (cell.isEmpty()) {
            errors.put("cell", "Choose the cell that the program is for.");
        }
        CourseId course = course(form, me, errors);
        if (!errors.isEmpty()) {
            return refused(HttpStatus.UNPROCESSABLE_CONTENT, form, errors, me, response, model);
        }
        AtomicBoolean busy = new AtomicBoolean();
        Optional<String> next = postOnce.run(form.formToken(), () -> {
            Optional<Uploaded> kept = brought.keep(upload, form, me, errors);
            return kept.isEmpty()
                    ? null
                    : answer(kept.get().revision(), cell.get(), course, me, new Refusals(form, errors, busy));
        });
        if (next.isPresent()) {
            return "redirect:" + next.get();
        }
        HttpStatus status = busy.get() ? HttpStatus.SERVICE_UNAVAILABLE : HttpStatus.UNPROCESSABLE_CONTENT;
        return refused(status, form, errors, me, response, model);
    }

    private @Nullable String answer(
            Revision revision, CellId cell, @Nullable CourseId course, SignedInPerson me, Refusals refusals) {
        Outcome outcome = checks.check(revision.id(), cell, course, me.id());
        if (outcome instanceof Outcome.Answered answered) {
            return "/checks/" + answered.answer().id();
        }
        if (outcome instanceof Outcome.Busy later) {
            refusals.busy().set(true);
            refusals.errors().put("", later.says());
        } else if (outcome instanceof Outcome.Unreadable unreadable) {
            refusals.errors().put(refusals.form().fieldOf("file"), unreadable.says());
        }
        return null;
    }

    private @Nullable CourseId course(ProgramForm form, SignedInPerson me, Map<String, String> errors) {
        if (form.course() == null || form.course().isBlank()) {
            return null;
        }
        Optional<CourseId> course = choices.course(me, form.course());
        if (course.isEmpty()) {
            errors.put("course", "Choose one of your courses.");
        }
        return course.orElse(null);
    }

    private String refused(
            HttpStatus status,
            ProgramForm form,
            Map<String, String> errors,
            SignedInPerson me,
            HttpServletResponse response,
            Model model) {
        response.setStatus(status.value());
        if (status == HttpStatus.SERVICE_UNAVAILABLE) {
            response.setHeader("Retry-After", "30");
        }
        return page(form.withUploadPasted(), errors, me, model);
    }

    private String page(ProgramForm form, Map<String, String> errors, SignedInPerson me, Model model) {
        model.addAttribute("form", form);
        model.addAttribute("errors", inOrder(errors));
        model.addAttribute("cells", choices.cells());
        model.addAttribute("courses", choices.courses(me));
        model.addAttribute("programs", choices.programs(me, form.program()));
        return "check/form";
    }

    /** As the fields stand on the page; what belongs to the whole form first, what has no place here last. */
    private static Map<String, String> inOrder(Map<String, String> errors) {
        Map<String, String> ordered = new LinkedHashMap<>();
        FIELDS.stream().filter(errors::containsKey).forEach(field -> ordered.put(field, errors.get(field)));
        errors.forEach(ordered::putIfAbsent);
        return ordered;
    }

    /** Where it is noted why nothing was answered. */
    private record Refusals(ProgramForm form, Map<String, String> errors, AtomicBoolean busy) {}
}
