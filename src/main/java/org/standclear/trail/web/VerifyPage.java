package org.standclear.trail.web;

import jakarta.servlet.http.HttpServletResponse;
import java.time.Clock;
import java.util.Map;
import org.jspecify.annotations.Nullable;
import org.springframework.http.HttpStatus;
import org.springframework.stereotype.Controller;
import org.springframework.ui.Model;
import org.springframework.web.bind.annotation.GetMapping;
import org.springframework.web.bind.annotation.PostMapping;
import org.springframework.web.bind.annotation.RequestParam;
import org.standclear.platform.ids.LabId;
import org.standclear.platform.lab.Labs;
import org.standclear.trail.KeptHash;
import org.standclear.trail.Trail;
import org.standclear.trail.TrailReader;
import org.standclear.trail.TrailVerification;

/** Recomputes the chain on request; it changes nothing, so it may be sent as often as anyone likes. */
@Controller
class VerifyPage {

    private final Trail trail;
    private final TrailReader reader;
    private final Labs labs;
    private final Clock clock;

    VerifyPage(Trail trail, TrailReader reader, Labs labs, Clock clock) {
        this.trail = trail;
        this.reader = reader;
        this.labs = labs;
        this.clock = clock;
    }

    @GetMapping("/record/verify")
    String form(Model model) {
        return page(VerifyForm.EMPTY, Map.of(), model);
    }

    @PostMapping("/record/verify")
    String verify(
            @RequestParam(required = false) @Nullable String entry,
            @RequestParam(required = false) @Nullable String hash,
            HttpServletResponse response,
            Model model) {
        VerifyForm form = VerifyForm.of(entry, hash);
        Map<String, String> errors = form.errors();
        if (!errors.isEmpty()) {
            response.setStatus(HttpStatus.UNPROCESSABLE_CONTENT.value());
            return page(form, errors, model);
        }
        LabId lab = labs.theLab().id();
        KeptHash kept = form.kept();
        TrailVerification found = trail.verify(lab);
        model.addAttribute("at", clock.instant());
        model.addAttribute("whole", found instanceof TrailVerification.Whole whole ? whole : null);
        model.addAttribute("broken", found instanceof TrailVerification.Broken broken ? broken : null);
        model.addAttribute("kept", kept == null ? null : kept.compare(reader, lab));
        return page(form, errors, model);
    }

    private static String page(VerifyForm form, Map<String, String> errors, Model model) {
        model.addAttribute("form", form);
        model.addAttribute("errors", errors);
        return "record/verify";
    }
}
