package org.standclear.people.web;

import jakarta.servlet.http.HttpServletResponse;
import java.time.Instant;
import java.time.LocalDate;
import java.time.LocalTime;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.function.Supplier;
import org.jspecify.annotations.Nullable;
import org.springframework.http.HttpStatus;
import org.springframework.security.core.annotation.AuthenticationPrincipal;
import org.springframework.stereotype.Controller;
import org.springframework.ui.Model;
import org.springframework.web.bind.annotation.PathVariable;
import org.springframework.web.bind.annotation.PostMapping;
import org.springframework.web.bind.annotation.RequestParam;
import org.standclear.people.CourseRegister;
import org.standclear.people.CourseRegister.NewAssignment;
import org.standclear.people.CourseRegister.Outcome;
import org.standclear.people.Invitations;
import org.standclear.people.People;
import org.standclear.people.Person;
import org.standclear.people.accounts.AccountForms;
import org.standclear.people.courses.CourseList;
import org.standclear.people.courses.CourseList.Section;
import org.standclear.platform.forms.PostOnce;
import org.standclear.platform.ids.CourseId;
import org.standclear.platform.ids.SectionId;
import org.standclear.platform.lab.Labs;
import org.standclear.platform.security.SignedInPerson;
import org.standclear.platform.time.LabTime;

/** Sections of a course, who is in them, and what they have to hand in. */
@Controller
class SectionPages {

    private static final int MOST_NAMES = 200;

    private final CourseList courses;
    private final CoursePage coursePage;
    private final CourseRegister register;
    private final Invitations invitations;
    private final People people;
    private final Labs labs;
    private final LabTime labTime;
    private final PostOnce postOnce;

    SectionPages(
            CourseList courses,
            CoursePage coursePage,
            CourseRegister register,
            Invitations invitations,
            People people,
            Labs labs,
            LabTime labTime,
            PostOnce postOnce) {
        this.courses = courses;
        this.coursePage = coursePage;
        this.register = register;
        this.invitations = invitations;
        this.people = people;
        this.labs = labs;
        this.labTime = labTime;
        this.postOnce = postOnce;
    }

    @PostMapping("/courses/{course}/sections")
    String addSection(
            @PathVariable CourseId course,
            @RequestParam Map<String, String> values,
            @AuthenticationPrincipal SignedInPerson me,
            HttpServletResponse response,
            Model model) {
        coursePage.course(course);
        Typed typed = new Typed(values);
        return run(course, typed, () -> register.addSection(course, typed.raw("code"), me.id()))
                .orElseGet(() -> again(course, me, typed, response, model));
    }

    @PostMapping("/courses/{course}/students")
    String enrol(
            @PathVariable CourseId course,
            @RequestParam Map<String, String> values,
            @AuthenticationPrincipal SignedInPerson me,
            HttpServletResponse response,
            Model model) {
        coursePage.course(course);
        Typed typed = new Typed(values);
        Optional<SectionId> section = section(course, typed);
        Named named = named(typed);
        Optional<String> done = section.isEmpty() || !typed.errors().isEmpty()
                ? Optional.empty()
                : run(course, typed, () -> {
                    named.ours().forEach(person -> register.enrol(person.id(), section.get(), me.id()));
                    named.others().forEach(login -> invitations.invite(login, section.get(), me.id()));
                    return new Outcome.Done<>(section.get());
                });
        return done.orElseGet(() -> again(course, me, typed, response, model));
    }

    /** People of this lab, and sign-in names that are not: where there are other labs, nobody is told whose they are. */
    private record Named(List<Person> ours, List<String> others) {}

    private Optional<SectionId> section(CourseId course, Typed typed) {
        Optional<SectionId> chosen = courses.sections(course).stream()
                .map(Section::id)
                .filter(id -> id.toString().equals(typed.raw("section")))
                .findFirst();
        if (chosen.isEmpty()) {
            typed.refuse("section", "Choose a section of this course.");
        }
        return chosen;
    }

    private Named named(Typed typed) {
        List<String> logins = typed.raw("logins")
                .lines()
                .flatMap(line -> List.of(line.split("[\\s,;]+")).stream())
                .filter(login -> !login.isBlank())
                .distinct()
                .toList();
        boolean alone = labs.all().size() == 1;
        List<Person> ours = new ArrayList<>();
        List<String> others = new ArrayList<>();
        List<String> unknown = new ArrayList<>();
        for (String login : logins.subList(0, Math.min(MOST_NAMES, logins.size()))) {
            Optional<Person> person =
                    people.byLogin(login).filter(one -> alone || !one.roles().isEmpty());
            if (person.filter(Person::active).isPresent()) {
                ours.add(person.get());
            } else if (alone || person.isPresent() || !AccountForms.isLogin(login.toLowerCase(Locale.ROOT))) {
                unknown.add(login);
            } else {
                others.add(login);
            }
        }
        if (logins.isEmpty()) {
            typed.refuse("logins", "Write one sign-in name or more.");
        } else if (logins.size() > MOST_NAMES) {
            typed.refuse("logins", "Use " + MOST_NAMES + " names at most at a time; these are " + logins.size() + ".");
        } else if (!unknown.isEmpty()) {
            typed.refuse("logins", "No open account has the sign-in name " + String.join(", ", unknown) + ".");
        }
        return new Named(ours, others);
    }

    @PostMapping("/courses/{course}/assignments")
    String addAssignment(
            @PathVariable CourseId course,
            @RequestParam Map<String, String> values,
            @AuthenticationPrincipal SignedInPerson me,
            HttpServletResponse response,
            Model model) {
        coursePage.course(course);
        Typed typed = new Typed(values);
        Integer runs = typed.whole("minimumRuns");
        Map<SectionId, Instant> due = due(course, typed);
        Optional<String> done = runs == null || !typed.errors().isEmpty()
                ? Optional.empty()
                : run(
                        course,
                        typed,
                        () -> register.addAssignment(
                                new NewAssignment(course, typed.raw("assignmentTitle"), runs, due, me.id())));
        return done.orElseGet(() -> again(course, me, typed, response, model));
    }

    private Map<SectionId, Instant> due(CourseId course, Typed typed) {
        Map<SectionId, Instant> due = new LinkedHashMap<>();
        LocalTime time = typed.time("dueTime");
        for (Section section : courses.sections(course)) {
            String field = "due-" + section.id();
            if (!typed.raw(field).isBlank()) {
                LocalDate day = typed.date(field);
                if (day != null && time != null) {
                    due.put(
                            section.id(),
                            day.atTime(time).atZone(labTime.zone()).toInstant());
                }
            }
        }
        if (due.isEmpty()) {
            typed.refuse("dueTime", "Give one section or more a day on which it is due.");
        }
        return due;
    }

    private <T> Optional<String> run(CourseId course, Typed typed, Supplier<Outcome<T>> act) {
        return postOnce.run(typed.raw("formToken"), () -> refused(act.get(), typed) ? null : "/courses/" + course)
                .map(location -> "redirect:" + location);
    }

    private static <T> boolean refused(@Nullable Outcome<T> outcome, Typed typed) {
        if (outcome instanceof Outcome.Refused<T> refused) {
            typed.refuse(refused.field().equals("title") ? "assignmentTitle" : refused.field(), refused.says());
            return true;
        }
        return false;
    }

    private String again(CourseId course, SignedInPerson me, Typed typed, HttpServletResponse response, Model model) {
        response.setStatus(HttpStatus.UNPROCESSABLE_CONTENT.value());
        return coursePage.show(course, me, typed, model);
    }
}
