package org.standclear.booking.web;

import jakarta.servlet.http.HttpServletResponse;
import java.util.LinkedHashMap;
import java.util.Map;
import java.util.Optional;
import java.util.UUID;
import java.util.function.Supplier;
import org.jspecify.annotations.Nullable;
import org.springframework.http.HttpStatus;
import org.springframework.security.core.annotation.AuthenticationPrincipal;
import org.springframework.stereotype.Controller;
import org.springframework.ui.Model;
import org.springframework.web.bind.annotation.PathVariable;
import org.springframework.web.bind.annotation.PostMapping;
import org.springframework.web.bind.annotation.RequestParam;
import org.standclear.booking.allocation.TurnPartners;
import org.standclear.booking.allocation.Window;
import org.standclear.booking.allocation.Windows;
import org.standclear.platform.ids.PersonId;
import org.standclear.platform.security.SignedInPerson;
import org.standclear.platform.web.NotFoundException;

/** Whoever was named as a partner in a window declines with one click, and takes that back with another. */
@Controller
class PartnerPages {

    private final Windows windows;
    private final TurnPartners partners;
    private final TurnSheets sheets;
    private final PatientPost patientPost;

    PartnerPages(Windows windows, TurnPartners partners, TurnSheets sheets, PatientPost patientPost) {
        this.windows = windows;
        this.partners = partners;
        this.sheets = sheets;
        this.patientPost = patientPost;
    }

    @PostMapping("/windows/{window}/partners/{operator}/decline")
    String decline(
            @PathVariable UUID window,
            @PathVariable PersonId operator,
            @RequestParam(required = false) @Nullable String formToken,
            @AuthenticationPrincipal SignedInPerson me,
            HttpServletResponse response,
            Model model) {
        return act(window, formToken, () -> partners.decline(window, operator, me.id()), me, response, model);
    }

    @PostMapping("/windows/{window}/partners/{operator}/can")
    String canAfterAll(
            @PathVariable UUID window,
            @PathVariable PersonId operator,
            @RequestParam(required = false) @Nullable String formToken,
            @AuthenticationPrincipal SignedInPerson me,
            HttpServletResponse response,
            Model model) {
        return act(window, formToken, () -> partners.canAfterAll(window, operator, me.id()), me, response, model);
    }

    private String act(
            UUID window,
            @Nullable String formToken,
            Supplier<Optional<String>> act,
            SignedInPerson me,
            HttpServletResponse response,
            Model model) {
        the(window);
        Map<String, String> errors = new LinkedHashMap<>();
        Optional<String> done = patientPost.run(formToken, () -> {
            errors.clear();
            Optional<String> refusal = act.get();
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

    private Window the(UUID id) {
        return windows.find(id).orElseThrow(() -> new NotFoundException("window"));
    }
}
