package org.standclear.check.web;

import jakarta.servlet.http.HttpServletResponse;
import java.util.LinkedHashMap;
import java.util.Map;
import java.util.Optional;
import org.jspecify.annotations.Nullable;
import org.springframework.http.HttpStatus;
import org.springframework.security.core.annotation.AuthenticationPrincipal;
import org.springframework.stereotype.Controller;
import org.springframework.ui.Model;
import org.springframework.web.bind.annotation.GetMapping;
import org.springframework.web.bind.annotation.ModelAttribute;
import org.springframework.web.bind.annotation.PostMapping;
import org.springframework.web.bind.annotation.RequestParam;
import org.standclear.platform.forms.PostOnce;
import org.standclear.platform.security.SignedInPerson;
import org.standclear.program.ProgramUploads.UploadProgram;
import org.standclear.program.ProgramUploads.Uploaded;

/** A program is kept without being checked yet. */
@Controller
class UploadPages {

    private final CheckChoices choices;
    private final BroughtProgram brought;
    private final PostOnce postOnce;

    UploadPages(CheckChoices choices, BroughtProgram brought, PostOnce postOnce) {
        this.choices = choices;
        this.brought = brought;
        this.postOnce = postOnce;
    }

    @GetMapping("/programs/upload")
    String form(@RequestParam @Nullable String program, @AuthenticationPrincipal SignedInPerson me, Model model) {
        return page(ProgramForm.empty(program, null, null), Map.of(), me, model);
    }

    @PostMapping("/programs/upload")
    String upload(
            @ModelAttribute ProgramForm form,
            @AuthenticationPrincipal SignedInPerson me,
            HttpServletResponse response,
            Model model) {
        Map<String, String> errors = new LinkedHashMap<>();
        Optional<UploadProgram> upload = brought.upload(form, me, errors);
        if (errors.isEmpty()) {
            Optional<String> next = postOnce.run(
                    form.formToken(),
                    () -> brought.keep(upload, form, me, errors)
                            .map(UploadPages::page)
                            .orElse(null));
            if (next.isPresent()) {
                return "redirect:" + next.get();
            }
        }
        response.setStatus(HttpStatus.UNPROCESSABLE_CONTENT.value());
        return page(form.withUploadPasted(), errors, me, model);
    }

    private static String page(Uploaded kept) {
        return "/programs/" + kept.revision().program() + (kept.unchanged() ? "?unchanged=1" : "");
    }

    private String page(ProgramForm form, Map<String, String> errors, SignedInPerson me, Model model) {
        model.addAttribute("form", form);
        model.addAttribute("errors", errors);
        model.addAttribute("programs", choices.programs(me, form.program()));
        return "program/upload";
    }
}
