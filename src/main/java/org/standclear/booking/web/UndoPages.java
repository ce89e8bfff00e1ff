package org.standclear.booking.web;

import jakarta.servlet.http.HttpServletResponse;
import java.util.LinkedHashMap;
import java.util.Map;
import java.util.Optional;
import java.util.UUID;
import org.jspecify.annotations.Nullable;
import org.springframework.http.HttpStatus;
import org.springframework.security.core.annotation.AuthenticationPrincipal;
import org.springframework.stereotype.Controller;
import org.springframework.ui.Model;
import org.springframework.web.bind.annotation.GetMapping;
import org.springframework.web.bind.annotation.PathVariable;
import org.springframework.web.bind.annotation.PostMapping;
import org.springframework.web.bind.annotation.RequestParam;
import org.standclear.booking.allocation.PlanDesk;
import org.standclear.booking.allocation.Window;
import org.standclear.booking.allocation.Windows;
import org.standclear.platform.security.SignedInPerson;
import org.standclear.platform.web.NotFoundException;

/** The accepted plan of a window, and taking it back as a whole. */
@Controller
class UndoPages {

    private final Windows windows;
    private final PlanDesk planDesk;
    private final PatientPost patientPost;

    UndoPages(Windows windows, PlanDesk planDesk, PatientPost patientPost) {
        this.windows = windows;
        this.planDesk = planDesk;
        this.patientPost = patientPost;
    }

    @GetMapping("/windows/{window}/plan")
    String plan(@PathVariable UUID window) {
        Window.Accepted accepted = the(window).accepted();
        return "redirect:" + (accepted == null ? "/windows/" + window : "/searches/" + accepted.search());
    }

    @GetMapping("/windows/{window}/undo")
    String ask(@PathVariable UUID window, Model model) {
        return page(the(window), Map.of(), model);
    }

    @PostMapping("/windows/{window}/undo")
    String undo(
            @PathVariable UUID window,
            @RequestParam(required = false) @Nullable String formToken,
            @AuthenticationPrincipal SignedInPerson me,
            HttpServletResponse response,
            Model model) {
        the(window);
        Map<String, String> errors = new LinkedHashMap<>();
        Optional<String> done = patientPost.run(formToken, () -> {
            Optional<String> refusal = planDesk.undo(window, me.id());
            refusal.ifPresent(says -> errors.put("", says));
            return refusal.isPresent() ? null : "/windows/" + window;
        });
        if (done.isPresent()) {
            return "redirect:" + done.get();
        }
        response.setStatus(HttpStatus.UNPROCESSABLE_CONTENT.value());
        return page(the(window), errors, model);
    }

    /** What cannot be undone any more is not offered, however the page was come to. */
    private String page(Window window, Map<String, String> errors, Model model) {
        model.addAttribute("window", window);
        model.addAttribute("whyNot", planDesk.whyNotUndo(window).orElse(""));
        model.addAttribute("errors", errors);
        return "booking/plan-undo";
    }

    private Window the(UUID id) {
        return windows.find(id).orElseThrow(() -> new NotFoundException("window"));
    }
}
