package org.standclear.booking.web;

import jakarta.servlet.http.HttpServletResponse;
import java.util.ArrayList;
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
import org.standclear.booking.BookingNumbers;
import org.standclear.booking.LengthEffects;
import org.standclear.people.Course;
import org.standclear.people.Courses;
import org.standclear.people.SlotLengths;
import org.standclear.platform.ids.CourseId;
import org.standclear.platform.security.SignedInPerson;
import org.standclear.platform.time.LabTime;
import org.standclear.platform.web.NotFoundException;

/** How long a slot of a course's students is: what another length would do is said before it is set. */
@Controller
class CourseLengthPages {

    private static final String PATH = "/courses/{course}/slot-length";

    private final Courses courses;
    private final SlotLengths lengths;
    private final LengthEffects effects;
    private final BookingNumbers numbers;
    private final OwnBookings own;
    private final PatientPost patientPost;
    private final LabTime labTime;

    CourseLengthPages(
            Courses courses,
            SlotLengths lengths,
            LengthEffects effects,
            BookingNumbers numbers,
            OwnBookings own,
            PatientPost patientPost,
            LabTime labTime) {
        this.courses = courses;
        this.lengths = lengths;
        this.effects = effects;
        this.numbers = numbers;
        this.own = own;
        this.patientPost = patientPost;
        this.labTime = labTime;
    }

    /** The form as it was sent; looking at the effect sends it by GET, setting the length by POST. */
    record LengthForm(
            @Nullable String formToken,
            @Nullable String minutes,
            @Nullable String reason) {

        String minutesText() {
            return minutes == null ? "" : minutes.strip();
        }
    }

    /** A line of the history. */
    record Changed(String when, String minutes, String who, String reason) {}

    @GetMapping(PATH)
    String show(@PathVariable CourseId course, @ModelAttribute LengthForm form, Model model) {
        Map<String, String> errors = new LinkedHashMap<>();
        if (form.minutes() != null) {
            read(form, errors);
        }
        return page(course, form, errors, form.minutes() != null && errors.isEmpty(), model);
    }

    @PostMapping(PATH)
    String set(
            @PathVariable CourseId course,
            @ModelAttribute LengthForm form,
            @AuthenticationPrincipal SignedInPerson me,
            HttpServletResponse response,
            Model model) {
        found(course);
        Map<String, String> errors = new LinkedHashMap<>();
        Optional<Integer> minutes = read(form, errors);
        if (errors.isEmpty()) {
            Optional<String> done = patientPost.run(form.formToken(), () -> {
                Optional<String> wrong =
                        lengths.setForCourse(course, minutes.orElse(null), String.valueOf(form.reason()), me.id());
                wrong.ifPresent(says -> errors.put("reason", says));
                return wrong.isPresent() ? null : "/courses/" + course + "/slot-length";
            });
            if (done.isPresent()) {
                return "redirect:" + done.get();
            }
        }
        response.setStatus(HttpStatus.UNPROCESSABLE_CONTENT.value());
        return page(course, form, errors, true, model);
    }

    /** The minutes; empty for the lab's own length, or when they cannot be, which then stands in the errors. */
    private Optional<Integer> read(LengthForm form, Map<String, String> errors) {
        String text = form.minutesText();
        if (text.isEmpty()) {
            return Optional.empty();
        }
        int usual = numbers.inForce().slotMinutes();
        if (!text.matches("[0-9]{1,3}") || Integer.parseInt(text) > 240) {
            errors.put("minutes", "Write whole minutes up to 240, or leave it empty for the lab’s " + usual + " min.");
            return Optional.empty();
        }
        if (Integer.parseInt(text) <= usual) {
            errors.put(
                    "minutes",
                    "The lab’s own slots last " + usual
                            + " min: a course can only have longer ones. Leave it empty for " + usual + " min.");
        }
        return Optional.of(Integer.parseInt(text));
    }

    private Course found(CourseId course) {
        return courses.find(course).orElseThrow(() -> new NotFoundException("course"));
    }

    private String page(CourseId id, LengthForm form, Map<String, String> errors, boolean looked, Model model) {
        Course course = found(id);
        int usual = numbers.inForce().slotMinutes();
        int now = lengths.ofCourse(id).orElse(usual);
        model.addAttribute("course", course);
        model.addAttribute(
                "headline",
                "Slots of " + course.code() + " last " + Math.max(now, usual) + " min"
                        + (now > usual ? "" : ", as the lab’s"));
        model.addAttribute("minutes", form.minutes() == null && now > usual ? String.valueOf(now) : form.minutesText());
        model.addAttribute("reason", form.reason() == null ? "" : form.reason());
        model.addAttribute("errors", errors);
        model.addAttribute("effect", looked && !errors.containsKey("minutes") ? effect(id, form) : List.of());
        model.addAttribute(
                "changes",
                lengths.changesOf(id).stream()
                        .map(one -> new Changed(
                                labTime.full(one.at()),
                                one.minutes() == null ? "as the lab" : one.minutes() + " min",
                                own.name(one.by()),
                                one.reason()))
                        .toList());
        return "booking/course-length";
    }

    private List<String> effect(CourseId id, LengthForm form) {
        Integer minutes = form.minutesText().isEmpty() ? null : Integer.valueOf(form.minutesText());
        LengthEffects.Effect effect = effects.of(id, minutes);
        int usual = numbers.inForce().slotMinutes();
        int over = effect.minutesThen() % usual;
        List<String> says = new ArrayList<>();
        says.add("A slot for this course then lasts " + effect.minutesThen() + " min instead of " + effect.minutesNow()
                + ", for " + effect.students() + (effect.students() == 1 ? " student." : " students."));
        says.add("In the next seven days " + effect.turnsThen() + " turns of this course fit on the cells that run, "
                + "instead of " + effect.turnsNow() + ", if nobody else came.");
        if (over > 0) {
            says.add("Slots begin every " + usual + " min, so " + (usual - over)
                    + " min after each of these turns stay unused on that cell.");
        }
        says.add(
                effect.bookingsAhead() == 0
                        ? "No booking for this course stands ahead."
                        : effect.bookingsAhead() + (effect.bookingsAhead() == 1 ? " booking stands" : " bookings stand")
                                + " ahead; they keep their times, the new length holds for bookings made from then on.");
        says.add("Whoever has longer slots than that keeps them.");
        return says;
    }
}
