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
import org.standclear.booking.allocation.TurnRequests;
import org.standclear.booking.allocation.Window;
import org.standclear.booking.allocation.WindowClosing;
import org.standclear.booking.allocation.Windows;
import org.standclear.platform.security.SignedInPerson;
import org.standclear.platform.web.NotFoundException;

/** Ends a window without a plan, after asking once more, and opens it again. */
@Controller
class WindowClosePages {

    private final Windows windows;
    private final WindowClosing closing;
    private final TurnRequests requests;
    private final TurnSheets sheets;
    private final PatientPost patientPost;

    WindowClosePages(
            Windows windows, WindowClosing closing, TurnRequests requests, TurnSheets sheets, PatientPost patientPost) {
        this.windows = windows;
        this.closing = closing;
        this.requests = requests;
        this.sheets = sheets;
        this.patientPost = patientPost;
    }

    @GetMapping("/windows/{window}/close")
    String ask(@PathVariable UUID window, Model model) {
        return page(the(window), "", Map.of(), model);
    }

    @PostMapping("/windows/{window}/close")
    String close(
            @PathVariable UUID window,
            @RequestParam(required = false) @Nullable String formToken,
            @RequestParam(defaultValue = "") String reason,
            @AuthenticationPrincipal SignedInPerson me,
            HttpServletResponse response,
            Model model) {
        Window found = the(window);
        Map<String, String> errors = new LinkedHashMap<>();
        Optional<String> done = patientPost.run(formToken, () -> {
            errors.clear();
            Optional<WindowClosing.Refused> refused = closing.close(window, reason, me.id());
            refused.ifPresent(why -> errors.put(why.field(), why.says()));
            return refused.isPresent() ? null : "/windows/" + window;
        });
        if (done.isPresent()) {
            return "redirect:" + done.get();
        }
        response.setStatus(HttpStatus.UNPROCESSABLE_CONTENT.value());
        return page(found, reason, errors, model);
    }

    @PostMapping("/windows/{window}/reopen")
    String reopen(
            @PathVariable UUID window,
            @RequestParam(required = false) @Nullable String formToken,
            @AuthenticationPrincipal SignedInPerson me,
            HttpServletResponse response,
            Model model) {
        the(window);
        Map<String, String> errors = new LinkedHashMap<>();
        Optional<String> done = patientPost.run(formToken, () -> {
            Optional<String> refusal = closing.reopen(window, me.id());
            refusal.ifPresent(says -> errors.put("", says));
            return refusal.isPresent() ? null : "/windows/" + window;
        });
        if (done.isPresent()) {
            return "redirect:" + done.get();
        }
        response.setStatus(HttpStatus.UNPROCESSABLE_CONTENT.value());
        Window now = the(window);
        return sheets.page(now, sheets.form(now, me), errors, me, model);
    }

    private String page(Window window, String reason, Map<String, String> errors, Model model) {
        model.addAttribute("window", window);
        model.addAttribute("asked", requests.of(window.id()).size());
        model.addAttribute("reason", reason);
        model.addAttribute("errors", errors);
        return "booking/window-close";
    }

    private Window the(UUID id) {
        return windows.find(id).orElseThrow(() -> new NotFoundException("window"));
    }
}
