package org.standclear.booking.web;

import jakarta.servlet.http.HttpServletResponse;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.UUID;
import org.jspecify.annotations.Nullable;
import org.springframework.http.HttpStatus;
import org.springframework.security.core.annotation.AuthenticationPrincipal;
import org.springframework.stereotype.Controller;
import org.springframework.ui.Model;
import org.springframework.web.bind.annotation.GetMapping;
import org.springframework.web.bind.annotation.ModelAttribute;
import org.springframework.web.bind.annotation.PathVariable;
import org.springframework.web.bind.annotation.PostMapping;
import org.springframework.web.bind.annotation.RequestParam;
import org.standclear.booking.allocation.TurnRequest;
import org.standclear.booking.allocation.TurnRequests;
import org.standclear.booking.allocation.Window;
import org.standclear.booking.allocation.Windows;
import org.standclear.platform.security.Role;
import org.standclear.platform.security.SignedInPerson;
import org.standclear.platform.time.LabTime;
import org.standclear.platform.web.NotFoundException;

/** Windows that are shared out by a plan: the list, a new one, and what somebody asks for. */
@Controller
class WindowPages {

    private final Windows windows;
    private final TurnRequests requests;
    private final TurnReader reader;
    private final TurnSheets sheets;
    private final PatientPost patientPost;
    private final LabTime labTime;

    WindowPages(
            Windows windows,
            TurnRequests requests,
            TurnReader reader,
            TurnSheets sheets,
            PatientPost patientPost,
            LabTime labTime) {
        this.windows = windows;
        this.requests = requests;
        this.reader = reader;
        this.sheets = sheets;
        this.patientPost = patientPost;
        this.labTime = labTime;
    }

    /** A line of the list. */
    record Line(UUID id, String title, String days, String state, String words) {}

    @GetMapping("/windows")
    String list(@AuthenticationPrincipal SignedInPerson me, Model model) {
        return list(new WindowForm(null, "", "", "", "", "12:00"), Map.of(), me, model);
    }

    @PostMapping("/windows")
    String open(
            @ModelAttribute WindowForm form,
            @AuthenticationPrincipal SignedInPerson me,
            HttpServletResponse response,
            Model model) {
        Map<String, String> errors = new LinkedHashMap<>();
        WindowForm.Read read = form.read(errors, labTime.zone(), labTime.now());
        if (read != null) {
            Optional<String> done = patientPost.run(
                    form.formToken(),
                    () -> "/windows/" + windows.open(read.title(), read.first(), read.last(), read.until(), me.id()));
            return "redirect:" + done.orElse("/windows");
        }
        response.setStatus(HttpStatus.UNPROCESSABLE_CONTENT.value());
        return list(form, errors, me, model);
    }

    @GetMapping("/windows/{window}")
    String show(@PathVariable UUID window, @AuthenticationPrincipal SignedInPerson me, Model model) {
        Window found = the(window);
        return sheets.page(found, sheets.form(found, me), Map.of(), me, model);
    }

    @PostMapping("/windows/{window}/request")
    String ask(
            @PathVariable UUID window,
            @ModelAttribute TurnForm form,
            @AuthenticationPrincipal SignedInPerson me,
            HttpServletResponse response,
            Model model) {
        Window found = the(window);
        Map<String, String> errors = new LinkedHashMap<>();
        Optional<TurnRequest> asked = reader.read(found, form, me, errors);
        if (asked.isPresent()) {
            Optional<String> done = patientPost.run(form.formToken(), () -> {
                if (!requests.ask(asked.get())) {
                    errors.put("", "The window was decided just now: it takes no requests any more.");
                    return null;
                }
                return "/windows/" + window;
            });
            if (done.isPresent()) {
                return "redirect:" + done.get();
            }
        }
        response.setStatus(HttpStatus.UNPROCESSABLE_CONTENT.value());
        return sheets.page(found, form, errors, me, model);
    }

    @PostMapping("/windows/{window}/withdraw")
    String withdraw(
            @PathVariable UUID window,
            @RequestParam(required = false) @Nullable String formToken,
            @AuthenticationPrincipal SignedInPerson me) {
        Window found = the(window);
        patientPost.run(formToken, () -> {
            if (found.takesRequests(labTime.now())) {
                requests.withdraw(window, me.id());
            }
            return "/windows/" + window;
        });
        return "redirect:/windows/" + window;
    }

    private Window the(UUID id) {
        return windows.find(id).orElseThrow(() -> new NotFoundException("window"));
    }

    private String list(WindowForm form, Map<String, String> errors, SignedInPerson me, Model model) {
        List<Line> lines =
                windows.from(labTime.today()).stream().map(this::line).toList();
        model.addAttribute("lines", lines);
        model.addAttribute("form", form);
        model.addAttribute("errors", errors);
        model.addAttribute("leads", me.is(Role.INSTRUCTOR));
        return "booking/windows";
    }

    private Line line(Window window) {
        boolean open = window.takesRequests(labTime.now());
        String days = TurnSheets.days(window, labTime);
        String state = window.accepted() != null
                ? "booked"
                : window.closed() != null ? "cancelled" : open ? "open" : "waiting";
        String words = window.accepted() != null
                ? "shared out"
                : window.closed() != null
                        ? "closed without a plan"
                        : open ? "asks until " + labTime.full(window.requestsUntil()) : "no more requests";
        return new Line(window.id(), window.title(), days, state, words);
    }
}
