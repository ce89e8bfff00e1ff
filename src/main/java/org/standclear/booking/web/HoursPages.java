package org.standclear.booking.web;

import jakarta.servlet.http.HttpServletResponse;
import java.time.DayOfWeek;
import java.time.LocalDate;
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
import org.springframework.web.bind.annotation.PostMapping;
import org.standclear.booking.OpenPeriod;
import org.standclear.booking.OpeningHours;
import org.standclear.booking.OpeningHours.DayHours;
import org.standclear.booking.web.HoursQuestion.Asked;
import org.standclear.platform.security.SignedInPerson;
import org.standclear.platform.time.LabTime;
import org.standclear.platform.web.StaleFormException;

/** When the lab is open, week by week and on single days; asks once more where bookings would be left outside. */
@Controller
class HoursPages {

    private final OpeningHours hours;
    private final HoursQuestion question;
    private final PatientPost patientPost;
    private final LabTime labTime;

    HoursPages(OpeningHours hours, HoursQuestion question, PatientPost patientPost, LabTime labTime) {
        this.hours = hours;
        this.question = question;
        this.patientPost = patientPost;
        this.labTime = labTime;
    }

    /** A day with hours of its own, for the list. */
    record OwnDay(String iso, String day, String hours, String note) {}

    @GetMapping("/book/hours")
    String show(Model model) {
        return page(WeekForm.of(hours.week()), new DayForm(null, null, "", "", null), Map.of(), model);
    }

    @PostMapping("/book/hours/week")
    String week(
            @ModelAttribute WeekForm form,
            @AuthenticationPrincipal SignedInPerson me,
            HttpServletResponse response,
            Model model) {
        Map<String, String> errors = new LinkedHashMap<>();
        Optional<Map<DayOfWeek, List<OpenPeriod>>> wanted = form.read(errors);
        if (wanted.isEmpty()) {
            response.setStatus(HttpStatus.UNPROCESSABLE_CONTENT.value());
            return page(form, new DayForm(null, null, "", "", null), errors, model);
        }
        Asked asked = question.asking(
                day -> hours.exceptions(day.day()).stream()
                                .anyMatch(own -> own.day().equals(day.day()))
                        ? day
                        : new DayHours(
                                day.day(), wanted.get().getOrDefault(day.day().getDayOfWeek(), List.of()), ""),
                form.confirmed());
        return answer(form.formToken(), asked, "/book/hours/week", form.again(), response, model, () -> {
            Map<DayOfWeek, List<OpenPeriod>> now = hours.week();
            if (!WeekForm.seen(now).equals(form.seen())) {
                throw new StaleFormException(
                        "The weekly hours", "/book/hours", WeekForm.words(wanted.get()), WeekForm.words(now));
            }
            hours.setWeek(wanted.get(), me.id(), form.reasonKept());
        });
    }

    @PostMapping("/book/hours/days")
    String day(
            @ModelAttribute DayForm form,
            @AuthenticationPrincipal SignedInPerson me,
            HttpServletResponse response,
            Model model) {
        Map<String, String> errors = new LinkedHashMap<>();
        Optional<DayHours> wanted = form.read(labTime.today(), errors);
        if (wanted.isEmpty()) {
            response.setStatus(HttpStatus.UNPROCESSABLE_CONTENT.value());
            return page(WeekForm.of(hours.week()), form, errors, model);
        }
        DayHours own = wanted.get();
        Asked asked = question.asking(day -> day.day().equals(own.day()) ? own : day, form.confirmed());
        return answer(
                form.formToken(),
                asked,
                "/book/hours/days",
                form.again(),
                response,
                model,
                () -> hours.except(own, me.id()));
    }

    @PostMapping("/book/hours/days/remove")
    String remove(
            @ModelAttribute DayForm form,
            @AuthenticationPrincipal SignedInPerson me,
            HttpServletResponse response,
            Model model) {
        Map<String, String> errors = new LinkedHashMap<>();
        Optional<LocalDate> day = form.dayRead(labTime.today(), errors);
        if (day.isEmpty() || !errors.isEmpty()) {
            response.setStatus(HttpStatus.UNPROCESSABLE_CONTENT.value());
            return page(WeekForm.of(hours.week()), form, errors, model);
        }
        List<OpenPeriod> everyWeek = hours.week().getOrDefault(day.get().getDayOfWeek(), List.of());
        Asked asked = question.asking(
                one -> one.day().equals(day.get()) ? new DayHours(one.day(), everyWeek, "") : one, form.confirmed());
        return answer(
                form.formToken(),
                asked,
                "/book/hours/days/remove",
                form.again(),
                response,
                model,
                () -> hours.asEveryWeek(day.get(), me.id()));
    }

    /** Does it, or shows which bookings it leaves outside and asks once more. */
    private String answer(
            @Nullable String token,
            Asked asked,
            String action,
            Map<String, @Nullable String> again,
            HttpServletResponse response,
            Model model,
            Runnable change) {
        Optional<String> done = patientPost.run(token, () -> {
            if (!asked.isConfirmed()) {
                return null;
            }
            change.run();
            return "/book/hours";
        });
        if (done.isPresent()) {
            return "redirect:" + done.get();
        }
        again.put("confirmed", asked.ids());
        response.setStatus(HttpStatus.UNPROCESSABLE_CONTENT.value());
        model.addAttribute("affected", asked.links());
        model.addAttribute("action", action);
        model.addAttribute("again", again);
        return "booking/hours-confirm";
    }

    private String page(WeekForm week, DayForm day, Map<String, String> errors, Model model) {
        LocalDate today = labTime.today();
        List<OwnDay> days = hours.exceptions(today).stream()
                .map(own -> new OwnDay(
                        own.day().toString(),
                        labTime.day(own.day()) + " " + own.day().getYear(),
                        PeriodsText.words(own.periods()),
                        own.note()))
                .toList();
        model.addAttribute("week", week);
        model.addAttribute("dayForm", day);
        model.addAttribute("days", days);
        model.addAttribute("zone", labTime.zone().getId());
        model.addAttribute("errors", errors);
        model.addAttribute("neverOpen", hours.week().isEmpty());
        return "booking/hours";
    }
}
