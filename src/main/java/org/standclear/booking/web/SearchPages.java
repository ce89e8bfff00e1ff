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
import org.standclear.booking.allocation.Search;
import org.standclear.booking.allocation.SearchDesk;
import org.standclear.booking.allocation.SearchDesk.Begun;
import org.standclear.booking.allocation.Searches;
import org.standclear.booking.allocation.Window;
import org.standclear.booking.allocation.Windows;
import org.standclear.platform.security.SignedInPerson;
import org.standclear.platform.web.NotFoundException;

/** Searching for a window's plan: begin, watch, stop, look at it, accept it. */
@Controller
class SearchPages {

    private final Windows windows;
    private final Searches searches;
    private final SearchDesk desk;
    private final PlanDesk planDesk;
    private final PlanSheets sheets;
    private final TurnSheets turnSheets;
    private final PatientPost patientPost;

    SearchPages(
            Windows windows,
            Searches searches,
            SearchDesk desk,
            PlanDesk planDesk,
            PlanSheets sheets,
            TurnSheets turnSheets,
            PatientPost patientPost) {
        this.windows = windows;
        this.searches = searches;
        this.desk = desk;
        this.planDesk = planDesk;
        this.sheets = sheets;
        this.turnSheets = turnSheets;
        this.patientPost = patientPost;
    }

    @PostMapping("/windows/{window}/searches")
    String begin(
            @PathVariable UUID window,
            @RequestParam(required = false) @Nullable String formToken,
            @AuthenticationPrincipal SignedInPerson me,
            HttpServletResponse response,
            Model model) {
        Window found = windows.find(window).orElseThrow(() -> new NotFoundException("window"));
        // the number of the search is its seed: the same requests and the same number give the same plan
        long seed = 1L + searches.of(found.id()).size();
        Map<String, String> errors = new LinkedHashMap<>();
        Optional<String> done = patientPost.run(formToken, () -> {
            Begun begun = desk.begin(window, seed, me.id());
            if (begun instanceof Begun.Refused refused) {
                errors.put("", refused.says());
                return null;
            }
            return "/searches/" + ((Begun.Searching) begun).search();
        });
        if (done.isPresent()) {
            return "redirect:" + done.get();
        }
        response.setStatus(HttpStatus.UNPROCESSABLE_CONTENT.value());
        return turnSheets.page(found, turnSheets.form(found, me), errors, me, model);
    }

    @GetMapping("/searches/{search}")
    String show(@PathVariable UUID search, Model model) {
        return sheets.page(the(search), Map.of(), model);
    }

    @PostMapping("/searches/{search}/stop")
    String stop(@PathVariable UUID search, @RequestParam(required = false) @Nullable String formToken) {
        Search found = the(search);
        patientPost.run(formToken, () -> {
            searches.stop(found.id());
            return "/searches/" + search;
        });
        return "redirect:/searches/" + search;
    }

    @PostMapping("/searches/{search}/accept")
    String accept(
            @PathVariable UUID search,
            @RequestParam(required = false) @Nullable String formToken,
            @AuthenticationPrincipal SignedInPerson me,
            HttpServletResponse response,
            Model model) {
        Search found = the(search);
        Map<String, String> errors = new LinkedHashMap<>();
        Optional<String> done = patientPost.run(formToken, () -> {
            Optional<String> refusal = planDesk.accept(search, me.id());
            refusal.ifPresent(says -> errors.put("", says));
            return refusal.isPresent() ? null : "/windows/" + found.window();
        });
        if (done.isPresent()) {
            return "redirect:" + done.get();
        }
        response.setStatus(HttpStatus.UNPROCESSABLE_CONTENT.value());
        return sheets.page(found, errors, model);
    }

    private Search the(UUID id) {
        return searches.find(id).orElseThrow(() -> new NotFoundException("search"));
    }
}
