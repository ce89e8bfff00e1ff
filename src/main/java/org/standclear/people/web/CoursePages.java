package org.standclear.people.web;

import jakarta.servlet.http.HttpServletResponse;
import java.util.LinkedHashMap;
import java.util.Map;
import java.util.Optional;
import java.util.function.Supplier;
import org.jspecify.annotations.Nullable;
import org.springframework.http.HttpStatus;
import org.springframework.security.core.annotation.AuthenticationPrincipal;
import org.springframework.stereotype.Controller;
import org.springframework.ui.Model;
import org.springframework.web.bind.annotation.GetMapping;
import org.springframework.web.bind.annotation.PathVariable;
import org.springframework.web.bind.annotation.PostMapping;
import org.springframework.web.bind.annotation.RequestParam;
import org.standclear.people.Course;
import org.standclear.people.CourseRegister;
import org.standclear.people.CourseRegister.NewLimits;
import org.standclear.people.CourseRegister.Outcome;
import org.standclear.people.courses.CourseList;
import org.standclear.platform.forms.PostOnce;
import org.standclear.platform.ids.CourseId;
import org.standclear.platform.security.SignedInPerson;
import org.standclear.platform.web.StaleFormException;

/** The courses and the limits that they set on their students' programs. */
@Controller
class CoursePages {

    private final CourseList courses;
    private final CoursePage coursePage;
    private final CourseRegister register;
    private final PostOnce postOnce;

    CoursePages(CourseList courses, CoursePage coursePage, CourseRegister register, PostOnce postOnce) {
        this.courses = courses;
        this.coursePage = coursePage;
        this.register = register;
        this.postOnce = postOnce;
    }

    @GetMapping("/courses")
    String list(Model model) {
        return list(new Typed(Map.of()), model);
    }

    @PostMapping("/courses")
    String add(
            @RequestParam Map<String, String> values,
            @AuthenticationPrincipal SignedInPerson me,
            HttpServletResponse response,
            Model model) {
        Typed typed = new Typed(values);
        Optional<String> done =
                run(typed, () -> register.addCourse(typed.raw("code"), typed.raw("courseTitle"), me.id()));
        if (done.isPresent()) {
            return done.get();
        }
        response.setStatus(HttpStatus.UNPROCESSABLE_CONTENT.value());
        return list(typed, model);
    }

    private String list(Typed typed, Model model) {
        model.addAttribute("courses", courses.all().stream().map(CourseView::of).toList());
        model.addAttribute("typed", typed);
        model.addAttribute("errors", typed.errors());
        return "people/courses";
    }

    @GetMapping("/courses/{course}")
    String course(@PathVariable CourseId course, @AuthenticationPrincipal SignedInPerson me, Model model) {
        return coursePage.show(course, me, new Typed(Map.of()), model);
    }

    @PostMapping("/courses/{course}/limits")
    String limits(
            @PathVariable CourseId course,
            @RequestParam Map<String, String> values,
            @AuthenticationPrincipal SignedInPerson me,
            HttpServletResponse response,
            Model model) {
        coursePage.course(course);
        Typed typed = new Typed(values);
        Double override = typed.number("overridePercent");
        Double speed = typed.number("toolSpeedMmS");
        Integer seen = typed.whole("version");
        if (override == null) {
            typed.refuse("overridePercent", "Write the override in percent, such as 50.");
        }
        Optional<String> done = !typed.errors().isEmpty() || override == null || seen == null
                ? Optional.empty()
                : run(
                        typed,
                        () -> changed(
                                register.changeLimits(
                                        new NewLimits(course, override, speed, typed.raw("reason"), seen, me.id())),
                                override,
                                speed));
        if (done.isPresent()) {
            return done.get();
        }
        response.setStatus(HttpStatus.UNPROCESSABLE_CONTENT.value());
        return coursePage.show(course, me, typed, model);
    }

    private static Outcome<CourseId> changed(Outcome<CourseId> outcome, double override, @Nullable Double speed) {
        if (outcome instanceof Outcome.Stale<CourseId> stale) {
            Course current = stale.current();
            throw new StaleFormException(
                    "the limits of " + current.code(),
                    "/courses/" + current.id(),
                    limits(override, speed),
                    limits(current.overridePercent(), current.toolSpeedMmS()));
        }
        return outcome;
    }

    private static Map<String, String> limits(double override, @Nullable Double speed) {
        Map<String, String> limits = new LinkedHashMap<>();
        limits.put("Override", LimitWords.override(override));
        limits.put("Tool speed", LimitWords.toolSpeed(speed));
        return limits;
    }

    private Optional<String> run(Typed typed, Supplier<Outcome<CourseId>> act) {
        return postOnce.run(typed.raw("formToken"), () -> {
                    Outcome<CourseId> outcome = act.get();
                    if (outcome instanceof Outcome.Refused<CourseId> refused) {
                        typed.refuse(refused.field().equals("title") ? "courseTitle" : refused.field(), refused.says());
                        return null;
                    }
                    return "/courses/" + ((Outcome.Done<CourseId>) outcome).id();
                })
                .map(location -> "redirect:" + location);
    }

    /** A course as the list shows it. */
    record CourseView(
            CourseId id, String code, String courseTitle, int sections, int students, String override, String speed) {

        static CourseView of(CourseList.CountedCourse counted) {
            Course course = counted.course();
            return new CourseView(
                    course.id(),
                    course.code(),
                    course.title(),
                    counted.sections(),
                    counted.students(),
                    LimitWords.override(course.overridePercent()),
                    LimitWords.toolSpeed(course.toolSpeedMmS()));
        }
    }
}
