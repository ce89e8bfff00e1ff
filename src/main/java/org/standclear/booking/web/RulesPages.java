package org.standclear.booking.web;

import jakarta.servlet.http.HttpServletResponse;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.springframework.http.HttpStatus;
import org.springframework.security.core.annotation.AuthenticationPrincipal;
import org.springframework.stereotype.Controller;
import org.springframework.ui.Model;
import org.springframework.web.bind.annotation.GetMapping;
import org.springframework.web.bind.annotation.ModelAttribute;
import org.springframework.web.bind.annotation.PostMapping;
import org.standclear.booking.BookingNumbers;
import org.standclear.booking.BookingSettings;
import org.standclear.platform.security.SignedInPerson;
import org.standclear.platform.time.LabTime;
import org.standclear.platform.web.StaleFormException;

/** The numbers of the booking rules: what holds, since when and why, and the form that changes them. */
@Controller
class RulesPages {

    private static final int SHOWN = 20;

    private final BookingNumbers numbers;
    private final OwnBookings own;
    private final PatientPost patientPost;
    private final LabTime labTime;

    RulesPages(BookingNumbers numbers, OwnBookings own, PatientPost patientPost, LabTime labTime) {
        this.numbers = numbers;
        this.own = own;
        this.patientPost = patientPost;
        this.labTime = labTime;
    }

    /** A line of the history. */
    record Changed(String when, String who, String numbers, String reason) {}

    @GetMapping("/book/rules")
    String show(Model model) {
        return page(RulesForm.of(numbers.inForce()), Map.of(), model);
    }

    @PostMapping("/book/rules")
    String change(
            @ModelAttribute RulesForm form,
            @AuthenticationPrincipal SignedInPerson me,
            HttpServletResponse response,
            Model model) {
        Map<String, String> errors = new LinkedHashMap<>();
        Optional<BookingSettings> wanted = form.read(errors);
        if (wanted.isPresent()) {
            Optional<String> done = patientPost.run(form.formToken(), () -> {
                BookingSettings now = numbers.inForce();
                if (!RulesForm.seen(now).equals(form.seen())) {
                    throw new StaleFormException("The booking rules", "/book/rules", words(wanted.get()), words(now));
                }
                if (now.equals(wanted.get())) {
                    errors.put("", "These are the numbers that hold already; nothing was changed.");
                    return null;
                }
                numbers.change(wanted.get(), me.id(), form.reasonKept());
                return "/book/rules";
            });
            if (done.isPresent()) {
                return "redirect:" + done.get();
            }
        }
        response.setStatus(HttpStatus.UNPROCESSABLE_CONTENT.value());
        return page(form, errors, model);
    }

    private String page(RulesForm form, Map<String, String> errors, Model model) {
        List<Changed> changes = numbers.changes(SHOWN).stream()
                .map(change -> new Changed(
                        labTime.full(change.at()), own.name(change.by()), line(change.settings()), change.reason()))
                .toList();
        model.addAttribute("form", form);
        model.addAttribute("errors", errors);
        model.addAttribute("changes", changes);
        return "booking/rules";
    }

    private static String line(BookingSettings one) {
        return words(one).entrySet().stream()
                .map(entry -> entry.getKey() + " " + entry.getValue())
                .collect(java.util.stream.Collectors.joining(", "));
    }

    private static Map<String, String> words(BookingSettings one) {
        Map<String, String> words = new LinkedHashMap<>();
        words.put("slot", one.slotMinutes() + " min");
        words.put("horizon", one.horizonDays() + " days");
        words.put("ahead", String.valueOf(one.futurePerPerson()));
        words.put("a week", String.valueOf(one.weekPerPerson()));
        words.put("an assignment", String.valueOf(one.perAssignment()));
        words.put("open to all", one.lateReleaseHours() + " h before");
        words.put("late cancel", one.lateCancelMinutes() + " min");
        words.put("check-in opens", one.checkInOpensMinutes() + " min before");
        words.put("grace", one.graceMinutes() + " min");
        words.put("offer stands", one.offerMinutes() + " min");
        words.put("confirmation", one.confirmMinutes() == 0 ? "not asked" : one.confirmMinutes() + " min before");
        return words;
    }
}
