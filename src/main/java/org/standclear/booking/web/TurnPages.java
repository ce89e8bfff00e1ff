package org.standclear.booking.web;

import jakarta.servlet.http.HttpServletResponse;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
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
import org.standclear.booking.BookingDesk;
import org.standclear.booking.Turns;
import org.standclear.booking.Turns.MakeUp;
import org.standclear.people.Accommodations;
import org.standclear.people.Accommodations.Accommodation;
import org.standclear.people.People;
import org.standclear.platform.access.AccessLog;
import org.standclear.platform.access.Sight;
import org.standclear.platform.ids.PersonId;
import org.standclear.platform.security.SignedInPerson;
import org.standclear.platform.time.LabTime;
import org.standclear.platform.web.NotFoundException;

/** What lab staff know and do about one person's turns: counts, make-ups, and what the lab does for the person. */
@Controller
class TurnPages {

    private final Turns turns;
    private final BookingDesk desk;
    private final Accommodations accommodations;
    private final People people;
    private final OwnBookings own;
    private final PatientPost patientPost;
    private final LabTime labTime;
    private final AccessLog looks;

    TurnPages(
            Turns turns,
            BookingDesk desk,
            Accommodations accommodations,
            People people,
            OwnBookings own,
            PatientPost patientPost,
            LabTime labTime,
            AccessLog looks) {
        this.turns = turns;
        this.desk = desk;
        this.accommodations = accommodations;
        this.people = people;
        this.own = own;
        this.patientPost = patientPost;
        this.labTime = labTime;
        this.looks = looks;
    }

    /** What the lab does for the person, as the form was sent. */
    record ArrangementsForm(
            @Nullable String formToken,
            @Nullable String slotMinutes,
            @Nullable String lowerBench,
            @Nullable String helper) {

        static ArrangementsForm of(Accommodation one) {
            return new ArrangementsForm(
                    null,
                    one.slotMinutes() == 0 ? "" : String.valueOf(one.slotMinutes()),
                    one.lowerBench() ? "true" : null,
                    one.helper() ? "true" : null);
        }

        Optional<Accommodation> read() {
            String minutes = slotMinutes == null ? "" : slotMinutes.strip();
            return minutes.matches("[0-9]{0,3}")
                    ? Optional.of(new Accommodation(
                            minutes.isEmpty() ? 0 : Integer.parseInt(minutes),
                            "true".equals(lowerBench),
                            "true".equals(helper)))
                    : Optional.empty();
        }
    }

    /** A line about a lost turn or a make-up. */
    record Line(String id, String words, String state, boolean stands) {}

    @GetMapping("/people/{person}/turns")
    String show(@PathVariable PersonId person, @AuthenticationPrincipal SignedInPerson me, Model model) {
        known(person);
        return page(person, me, arrangements(person), Map.of(), model);
    }

    @PostMapping("/people/{person}/turns/arrangements")
    String arrange(
            @PathVariable PersonId person,
            @ModelAttribute ArrangementsForm form,
            @AuthenticationPrincipal SignedInPerson me,
            HttpServletResponse response,
            Model model) {
        known(person);
        Map<String, String> errors = new LinkedHashMap<>();
        Optional<Accommodation> wanted = form.read();
        Optional<String> done = patientPost.run(form.formToken(), () -> {
            Optional<String> wrong = wanted.isEmpty()
                    ? Optional.of("Write whole minutes, or leave it empty for the usual length.")
                    : accommodations.set(person, wanted.get(), me.id());
            wrong.ifPresent(says -> errors.put("slotMinutes", says));
            return wrong.isPresent() ? null : path(person);
        });
        if (done.isPresent()) {
            return "redirect:" + done.get();
        }
        response.setStatus(HttpStatus.UNPROCESSABLE_CONTENT.value());
        return page(person, me, form, errors, model);
    }

    @PostMapping("/people/{person}/turns/count-anew")
    String countAnew(
            @PathVariable PersonId person,
            @RequestParam(required = false) @Nullable String formToken,
            @AuthenticationPrincipal SignedInPerson me) {
        return act(person, formToken, () -> turns.countAnew(person, me.id()));
    }

    @PostMapping("/people/{person}/turns/make-up")
    String giveMakeUp(
            @PathVariable PersonId person,
            @RequestParam(required = false) @Nullable String formToken,
            @RequestParam(defaultValue = "") String reason,
            @AuthenticationPrincipal SignedInPerson me,
            HttpServletResponse response,
            Model model) {
        known(person);
        Map<String, String> errors = new LinkedHashMap<>();
        Optional<String> done = patientPost.run(formToken, () -> {
            Optional<String> wrong = turns.giveMakeUp(person, reason, me.id());
            wrong.ifPresent(says -> errors.put("reason", says));
            return wrong.isPresent() ? null : path(person);
        });
        if (done.isPresent()) {
            return "redirect:" + done.get();
        }
        response.setStatus(HttpStatus.UNPROCESSABLE_CONTENT.value());
        model.addAttribute("reason", reason);
        return page(person, me, arrangements(person), errors, model);
    }

    private String act(PersonId person, @Nullable String formToken, Runnable act) {
        known(person);
        return "redirect:"
                + patientPost
                        .run(formToken, () -> {
                            act.run();
                            return path(person);
                        })
                        .orElse(path(person));
    }

    private static String path(PersonId person) {
        return "/people/" + person + "/turns";
    }

    private void known(PersonId person) {
        if (people.find(person).isEmpty()) {
            throw new NotFoundException("person");
        }
    }

    private ArrangementsForm arrangements(PersonId person) {
        return ArrangementsForm.of(accommodations.of(person).orElse(Accommodation.NONE));
    }

    private String page(
            PersonId person, SignedInPerson me, ArrangementsForm form, Map<String, String> errors, Model model) {
        known(person);
        looks.looked(me.id(), Sight.TURNS, person.toString(), List.of(person));
        BookingDesk.QuotaUse use = desk.quotaOf(person);
        List<Line> lost = turns.lostBy(person).stream()
                .limit(20)
                .map(one -> new Line(
                        one.booking().id().toString(),
                        own.title(one.booking()),
                        one.excusedBy() == null
                                ? one.booking().state().words()
                                : one.booking().state().words() + ", excused",
                        one.excusedBy() == null))
                .toList();
        model.addAttribute("personId", person);
        model.addAttribute("printedName", people.printedName(person));
        model.addAttribute(
                "use",
                use.ahead() + " of " + use.aheadAllowed() + " bookings ahead, " + use.thisWeek() + " of "
                        + use.weekAllowed() + " this week");
        model.addAttribute("lost", lost);
        model.addAttribute(
                "anew",
                turns.countedAnew(person)
                        .map(at -> "Counted anew since " + labTime.full(at))
                        .orElse(""));
        model.addAttribute(
                "makeUps", turns.makeUpsOf(person).stream().map(this::makeUp).toList());
        model.addAttribute("form", form);
        model.addAttribute("errors", errors);
        return "booking/turns";
    }

    private Line makeUp(MakeUp one) {
        String state = one.withdrawn() != null
                ? "withdrawn"
                : one.stands() ? "until " + labTime.day(one.validUntil()) : one.usedBy() != null ? "used" : "expired";
        return new Line(
                one.id().toString(),
                "Given " + labTime.full(one.grantedAt()) + (one.reason().isEmpty() ? "" : ": " + one.reason()),
                state,
                one.stands());
    }
}
