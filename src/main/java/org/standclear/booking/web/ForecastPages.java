package org.standclear.booking.web;

import jakarta.servlet.http.HttpServletResponse;
import java.time.Duration;
import java.time.Instant;
import java.time.LocalDate;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.springframework.http.HttpStatus;
import org.springframework.security.core.annotation.AuthenticationPrincipal;
import org.springframework.stereotype.Controller;
import org.springframework.ui.Model;
import org.springframework.web.bind.annotation.GetMapping;
import org.springframework.web.bind.annotation.PathVariable;
import org.springframework.web.bind.annotation.PostMapping;
import org.springframework.web.bind.annotation.RequestParam;
import org.standclear.booking.DueLetters;
import org.standclear.people.DueDates;
import org.standclear.people.DueDates.DueAssignment;
import org.standclear.people.DueDates.DueSection;
import org.standclear.platform.ids.AssignmentId;
import org.standclear.platform.ids.SectionId;
import org.standclear.platform.security.SignedInPerson;
import org.standclear.platform.text.PlainText;
import org.standclear.platform.time.LabTime;
import org.standclear.platform.web.NotFoundException;

/** What due dates do to the lab's days, while they are being set; and moving them. */
@Controller
class ForecastPages {

    private static final int LONGEST_REASON = 400;

    /** A date that has passed may still be moved; the terms before are not what anybody looks for here. */
    private static final Duration STILL_LISTED = Duration.ofDays(28);

    private final DueDates dueDates;
    private final DueLetters letters;
    private final ForecastSheets sheets;
    private final PatientPost patientPost;
    private final LabTime labTime;

    ForecastPages(
            DueDates dueDates, DueLetters letters, ForecastSheets sheets, PatientPost patientPost, LabTime labTime) {
        this.dueDates = dueDates;
        this.letters = letters;
        this.sheets = sheets;
        this.patientPost = patientPost;
        this.labTime = labTime;
    }

    /** An assignment to choose, with its due dates in words. */
    record Choice(AssignmentId id, String name, String due) {}

    @GetMapping("/forecast")
    String choose(Model model) {
        List<Choice> choices = dueDates.dueFrom(labTime.now().minus(STILL_LISTED)).stream()
                .map(one -> new Choice(
                        one.id(),
                        one.course() + ", " + one.title(),
                        one.sections().stream()
                                .map(section -> section.code() + " " + labTime.day(section.due()))
                                .collect(java.util.stream.Collectors.joining(", "))))
                .toList();
        model.addAttribute("choices", choices);
        return "booking/forecasts";
    }

    @GetMapping("/forecast/{assignment}")
    String show(@PathVariable AssignmentId assignment, @RequestParam Map<String, String> query, Model model) {
        return sheets.page(the(assignment), ForecastForm.of(query), Map.of(), model);
    }

    @GetMapping("/forecast/{assignment}/move")
    String ask(@PathVariable AssignmentId assignment, @RequestParam Map<String, String> query, Model model) {
        return confirm(the(assignment), ForecastForm.of(query), new LinkedHashMap<>(), model);
    }

    @PostMapping("/forecast/{assignment}/move")
    String move(
            @PathVariable AssignmentId assignment,
            @RequestParam Map<String, String> sent,
            @AuthenticationPrincipal SignedInPerson me,
            HttpServletResponse response,
            Model model) {
        DueAssignment now = the(assignment);
        ForecastForm form = ForecastForm.of(sent);
        Map<String, String> errors = new LinkedHashMap<>();
        Map<SectionId, Instant> wanted = instants(now, form.days(now, labTime, errors));
        if (PlainText.check(sent.get("reason"), LONGEST_REASON) instanceof PlainText.Fine fine && errors.isEmpty()) {
            Optional<String> done = patientPost.run(sent.get("formToken"), () -> {
                Optional<String> refusal =
                        dueDates.move(assignment, seen(now, sent, errors), wanted, fine.text(), me.id());
                refusal.ifPresentOrElse(says -> errors.put("", says), () -> letters.moved(now, wanted, fine.text()));
                return errors.isEmpty() ? "/forecast/" + assignment : null;
            });
            if (done.isPresent()) {
                return "redirect:" + done.get();
            }
        } else {
            errors.putIfAbsent("reason", "Write why; students read it, and it stands in the record.");
        }
        response.setStatus(HttpStatus.UNPROCESSABLE_CONTENT.value());
        return confirm(now, form, errors, model);
    }

    /** The due dates that the confirmation showed; another one in force since is refused. */
    private static Map<SectionId, Instant> seen(
            DueAssignment now, Map<String, String> sent, Map<String, String> errors) {
        Map<SectionId, Instant> seen = new LinkedHashMap<>();
        for (DueSection section : now.sections()) {
            String text = sent.get("seen-" + section.id());
            if (text != null && !text.equals(section.due().toString())) {
                errors.put(
                        "",
                        "Somebody changed the due date of section " + section.code()
                                + " since this page was shown; look again.");
            }
            seen.put(section.id(), section.due());
        }
        return seen;
    }

    /** The new day at the time of day of the old one, in the lab's zone. */
    private Map<SectionId, Instant> instants(DueAssignment now, Map<SectionId, LocalDate> days) {
        Map<SectionId, Instant> instants = new LinkedHashMap<>();
        for (DueSection section : now.sections()) {
            LocalDate day = days.getOrDefault(section.id(), labTime.date(section.due()));
            instants.put(
                    section.id(),
                    day.atTime(section.due().atZone(labTime.zone()).toLocalTime())
                            .atZone(labTime.zone())
                            .toInstant());
        }
        return instants;
    }

    /** A section's due date before and after. */
    record Moved(String field, String section, String before, String after, String day, String seen, boolean changes) {}

    private String confirm(DueAssignment now, ForecastForm form, Map<String, String> errors, Model model) {
        Map<SectionId, Instant> wanted = instants(now, form.days(now, labTime, errors));
        model.addAttribute("assignment", now);
        model.addAttribute("errors", errors);
        model.addAttribute("reason", form.due().getOrDefault("reason", ""));
        model.addAttribute("changes", !wanted.equals(now.due()));
        model.addAttribute(
                "moved",
                now.sections().stream()
                        .map(section -> new Moved(
                                ForecastForm.field(section.id()),
                                section.code(),
                                labTime.full(section.due()),
                                labTime.full(wanted.getOrDefault(section.id(), section.due())),
                                labTime.date(wanted.getOrDefault(section.id(), section.due()))
                                        .toString(),
                                section.due().toString(),
                                !section.due().equals(wanted.get(section.id()))))
                        .toList());
        return "booking/forecast-move";
    }

    private DueAssignment the(AssignmentId id) {
        return dueDates.find(id).orElseThrow(() -> new NotFoundException("assignment"));
    }
}
