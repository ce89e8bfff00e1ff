package org.standclear.booking.web;

import jakarta.servlet.http.HttpServletResponse;
import java.time.Instant;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.UUID;
import java.util.stream.Stream;
import org.jspecify.annotations.Nullable;
import org.springframework.http.HttpStatus;
import org.springframework.security.core.annotation.AuthenticationPrincipal;
import org.springframework.stereotype.Controller;
import org.springframework.ui.Model;
import org.springframework.web.bind.annotation.GetMapping;
import org.springframework.web.bind.annotation.PathVariable;
import org.springframework.web.bind.annotation.PostMapping;
import org.springframework.web.bind.annotation.RequestParam;
import org.standclear.booking.Pairs;
import org.standclear.people.Course;
import org.standclear.people.Courses;
import org.standclear.people.People;
import org.standclear.people.Teams;
import org.standclear.platform.ids.CourseId;
import org.standclear.platform.ids.LabId;
import org.standclear.platform.ids.PersonId;
import org.standclear.platform.ids.SectionId;
import org.standclear.platform.lab.LabScope;
import org.standclear.platform.lab.Labs;
import org.standclear.platform.security.SignedInPerson;
import org.standclear.platform.time.LabTime;
import org.standclear.platform.web.NotFoundException;

/** Pairs and teams: the instructor keeps those of a course, everybody sees their own, both with who worked with whom. */
@Controller
class PairPages {

    private static final String PATH = "/courses/{course}/teams";
    private static final int PAST = 50;
    private static final int MOST_NAMES = 20;

    private final Teams teams;
    private final Pairs pairs;
    private final Courses courses;
    private final People people;
    private final PatientPost patientPost;
    private final Labs labs;
    private final LabTime labTime;

    PairPages(
            Teams teams,
            Pairs pairs,
            Courses courses,
            People people,
            PatientPost patientPost,
            Labs labs,
            LabTime labTime) {
        this.teams = teams;
        this.pairs = pairs;
        this.courses = courses;
        this.people = people;
        this.patientPost = patientPost;
        this.labs = labs;
        this.labTime = labTime;
    }

    /** A member of a team. */
    record MemberLine(String id, String section, String team, String name, String when) {}

    /** Two people, how often, and when: the last time, or the next. */
    record PairLine(String operator, String attendant, String times, String when) {}

    @GetMapping("/me/partners")
    String mine(@AuthenticationPrincipal SignedInPerson me, Model model) {
        List<String> partners = people.printedNames(teams.partnersOf(me.id())).values().stream()
                .sorted()
                .toList();
        List<Teams.Member> own = teams.ofPerson(me.id());
        List<Pairs.Together> ran = pairs.ofPerson(me.id());
        List<Pairs.Ahead> ahead = pairs.aheadOf(me.id());
        Map<PersonId, String> names = names(own, ran, ahead);
        model.addAttribute(
                "headline",
                partners.isEmpty()
                        ? "You are in no team with anybody"
                        : "You work with " + String.join(", ", partners));
        model.addAttribute("teams", members(own, names));
        model.addAttribute("pairs", ran(ran, names));
        model.addAttribute("ahead", ahead(ahead, names));
        return "booking/partners";
    }

    @GetMapping(PATH)
    String course(@PathVariable CourseId course, Model model) {
        return page(found(course), Map.of(), Map.of(), model);
    }

    @PostMapping(PATH)
    String put(
            @PathVariable CourseId course,
            @RequestParam Map<String, String> typed,
            @AuthenticationPrincipal SignedInPerson me,
            HttpServletResponse response,
            Model model) {
        Course found = found(course);
        Map<String, String> errors = new LinkedHashMap<>();
        Optional<SectionId> section = teams.sections(course).keySet().stream()
                .filter(id -> id.toString().equals(typed.get("in")))
                .findFirst();
        if (section.isEmpty()) {
            errors.put("in", "Choose a section of this course.");
        }
        List<PersonId> named = named(typed.getOrDefault("logins", ""), errors);
        if (errors.isEmpty()) {
            Optional<String> done = patientPost.run(typed.get("formToken"), () -> {
                Optional<Teams.Wrong> wrong =
                        teams.put(section.orElseThrow(), typed.getOrDefault("team", ""), named, me.id());
                wrong.ifPresent(one -> errors.put(one.field(), one.says()));
                return wrong.isPresent() ? null : path(course);
            });
            if (done.isPresent()) {
                return "redirect:" + done.get();
            }
        }
        response.setStatus(HttpStatus.UNPROCESSABLE_CONTENT.value());
        return page(found, typed, errors, model);
    }

    private List<PersonId> named(String logins, Map<String, String> errors) {
        List<String> names = Arrays.stream(logins.split("[\\s,;]+"))
                .filter(name -> !name.isBlank())
                .distinct()
                .toList();
        if (names.isEmpty() || names.size() > MOST_NAMES) {
            errors.put("logins", "Write 1 to " + MOST_NAMES + " sign-in names.");
            return List.of();
        }
        List<PersonId> found = new ArrayList<>();
        for (String name : names) {
            people.byLogin(name)
                    .filter(person -> person.active() && !person.roles().isEmpty())
                    .ifPresentOrElse(
                            person -> found.add(person.id()),
                            () -> errors.putIfAbsent("logins", "No open account has the sign-in name " + name + "."));
        }
        return found;
    }

    @PostMapping(PATH + "/{member}/remove")
    String takeOut(
            @PathVariable CourseId course,
            @PathVariable UUID member,
            @RequestParam(required = false) @Nullable String formToken,
            @AuthenticationPrincipal SignedInPerson me) {
        found(course);
        if (teams.of(course).stream().noneMatch(one -> one.id().equals(member))) {
            throw new NotFoundException("team");
        }
        return "redirect:"
                + patientPost
                        .run(formToken, () -> {
                            teams.takeOut(member, me.id());
                            return path(course);
                        })
                        .orElse(path(course));
    }

    private static String path(CourseId course) {
        return "/courses/" + course + "/teams";
    }

    private Course found(CourseId course) {
        return courses.find(course).orElseThrow(() -> new NotFoundException("course"));
    }

    private String page(Course course, Map<String, String> typed, Map<String, String> errors, Model model) {
        List<Teams.Member> members = teams.of(course.id());
        List<Teams.Member> past = teams.past(course.id(), PAST);
        List<Pairs.Together> ran = pairs.ofCourse(course.id());
        List<Pairs.Ahead> ahead = pairs.aheadOf(course.id());
        Map<PersonId, String> names =
                names(Stream.concat(members.stream(), past.stream()).toList(), ran, ahead);
        List<MemberLine> standing = members(members, names);
        long number = standing.stream()
                .map(one -> one.section() + " " + one.team())
                .distinct()
                .count();
        Map<String, String> choices = new LinkedHashMap<>();
        teams.sections(course.id()).forEach((id, code) -> choices.put(id.toString(), code));
        model.addAttribute("course", course);
        model.addAttribute(
                "headline",
                number == 0
                        ? course.code() + " has no teams yet"
                        : course.code() + " has " + number + (number == 1 ? " team" : " teams"));
        model.addAttribute("standing", standing);
        model.addAttribute("past", members(past, names));
        model.addAttribute("pairs", ran(ran, names));
        model.addAttribute("ahead", ahead(ahead, names));
        model.addAttribute("sectionChoices", choices);
        model.addAttribute("typed", typed);
        model.addAttribute("errors", errors);
        return "booking/teams";
    }

    /** The names of everybody in the lists, asked together. */
    private Map<PersonId, String> names(List<Teams.Member> members, List<Pairs.Together> ran, List<Pairs.Ahead> ahead) {
        return people.printedNames(Stream.of(
                        members.stream().map(Teams.Member::person),
                        ran.stream().flatMap(one -> Stream.of(one.operator(), one.attendant())),
                        ahead.stream().flatMap(one -> Stream.of(one.operator(), one.attendant())))
                .flatMap(those -> those)
                .toList());
    }

    private List<MemberLine> members(List<Teams.Member> all, Map<PersonId, String> names) {
        return all.stream().map(one -> member(one, names)).toList();
    }

    private MemberLine member(Teams.Member one, Map<PersonId, String> names) {
        Instant until = one.until();
        String from = labTime.day(one.from());
        return new MemberLine(
                one.id().toString(),
                one.section(),
                one.team(),
                names.getOrDefault(one.person(), People.UNKNOWN),
                until == null ? "since " + from : from + " to " + labTime.day(until));
    }

    private List<PairLine> ran(List<Pairs.Together> all, Map<PersonId, String> names) {
        return all.stream()
                .map(one -> new PairLine(
                        names.getOrDefault(one.operator(), People.UNKNOWN),
                        names.getOrDefault(one.attendant(), People.UNKNOWN),
                        one.runs() == 1 ? "1 run" : one.runs() + " runs",
                        labTime.day(one.last())))
                .toList();
    }

    private List<PairLine> ahead(List<Pairs.Ahead> all, Map<PersonId, String> names) {
        Map<LabId, String> places = new HashMap<>();
        return all.stream()
                .map(one -> new PairLine(
                        names.getOrDefault(one.operator(), People.UNKNOWN),
                        names.getOrDefault(one.attendant(), People.UNKNOWN),
                        one.bookings() == 1 ? "1 booking" : one.bookings() + " bookings",
                        LabScope.in(one.lab(), () -> labTime.day(one.next()) + " " + labTime.time(one.next()))
                                + places.computeIfAbsent(one.lab(), this::place)))
                .toList();
    }

    private String place(LabId id) {
        return labs.find(id).map(lab -> lab.seenFrom(labs.theLab())).orElse("");
    }
}
