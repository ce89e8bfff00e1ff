package org.standclear.booking.web;

import jakarta.servlet.http.HttpServletResponse;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.Optional;
import java.util.Set;
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
import org.standclear.people.AssignmentNeeds;
import org.standclear.people.AssignmentNeeds.Needs;
import org.standclear.people.Course;
import org.standclear.people.Courses;
import org.standclear.people.Criteria;
import org.standclear.people.DueDates;
import org.standclear.people.DueDates.DueAssignment;
import org.standclear.platform.ids.AssignmentId;
import org.standclear.platform.ids.CourseId;
import org.standclear.platform.security.SignedInPerson;
import org.standclear.platform.time.LabTime;
import org.standclear.platform.web.NotFoundException;

/** One assignment: what its runs are to show, and what it needs of a cell. */
@Controller
class AssignmentPages {

    private static final String PATH = "/courses/{course}/assignments/{assignment}";

    private final Courses courses;
    private final DueDates dueDates;
    private final Criteria criteria;
    private final AssignmentNeeds needs;
    private final AssignmentChoices choices;
    private final PatientPost patientPost;
    private final LabTime labTime;

    AssignmentPages(
            Courses courses,
            DueDates dueDates,
            Criteria criteria,
            AssignmentNeeds needs,
            AssignmentChoices choices,
            PatientPost patientPost,
            LabTime labTime) {
        this.courses = courses;
        this.dueDates = dueDates;
        this.criteria = criteria;
        this.needs = needs;
        this.choices = choices;
        this.patientPost = patientPost;
        this.labTime = labTime;
    }

    /** A section's due date. */
    record Due(String section, String when) {}

    @GetMapping(PATH)
    String show(@PathVariable CourseId course, @PathVariable AssignmentId assignment, Model model) {
        return page(course, found(course, assignment), Map.of(), Map.of(), model);
    }

    @PostMapping(PATH + "/criteria")
    String add(
            @PathVariable CourseId course,
            @PathVariable AssignmentId assignment,
            @RequestParam Map<String, String> typed,
            @AuthenticationPrincipal SignedInPerson me,
            HttpServletResponse response,
            Model model) {
        DueAssignment found = found(course, assignment);
        Map<String, String> errors = new LinkedHashMap<>();
        String points = typed.getOrDefault("points", "").strip();
        if (!points.matches("[0-9]{0,4}")) {
            errors.put("points", "Write a whole number, or leave it empty for none.");
        }
        if (errors.isEmpty()) {
            Integer read = points.isEmpty() ? null : Integer.valueOf(points);
            Optional<String> done = patientPost.run(typed.get("formToken"), () -> {
                Optional<Criteria.Wrong> wrong =
                        criteria.add(assignment, typed.getOrDefault("words", ""), read, me.id());
                wrong.ifPresent(one -> errors.put(one.field(), one.says()));
                return wrong.isPresent() ? null : path(course, assignment);
            });
            if (done.isPresent()) {
                return "redirect:" + done.get();
            }
        }
        response.setStatus(HttpStatus.UNPROCESSABLE_CONTENT.value());
        return page(course, found, typed, errors, model);
    }

    @PostMapping(PATH + "/criteria/{criterion}/retire")
    String retire(
            @PathVariable CourseId course,
            @PathVariable AssignmentId assignment,
            @PathVariable UUID criterion,
            @RequestParam(required = false) @Nullable String formToken,
            @AuthenticationPrincipal SignedInPerson me) {
        found(course, assignment);
        if (criteria.find(criterion)
                .filter(one -> one.assignment().equals(assignment))
                .isEmpty()) {
            throw new NotFoundException("criterion");
        }
        String next = path(course, assignment);
        return "redirect:"
                + patientPost
                        .run(formToken, () -> {
                            criteria.retire(criterion, me.id());
                            return next;
                        })
                        .orElse(next);
    }

    @PostMapping(PATH + "/needs")
    String need(
            @PathVariable CourseId course,
            @PathVariable AssignmentId assignment,
            @RequestParam(required = false) @Nullable String formToken,
            @RequestParam(defaultValue = "") String tool,
            @RequestParam(required = false) @Nullable List<String> features,
            @AuthenticationPrincipal SignedInPerson me,
            HttpServletResponse response,
            Model model) {
        DueAssignment found = found(course, assignment);
        Map<String, String> errors = new LinkedHashMap<>();
        Set<String> chosen = features == null ? Set.of() : Set.copyOf(features);
        if (!tool.isEmpty() && !choices.tools().containsKey(tool)) {
            errors.put("tool", "Choose a tool that the lab has.");
        }
        if (!choices.features(needs.of(assignment)).keySet().containsAll(chosen)) {
            errors.put("features", "Choose features that a cell has.");
        }
        if (errors.isEmpty()) {
            Optional<String> done = patientPost.run(formToken, () -> {
                needs.set(assignment, new Needs(tool.isEmpty() ? null : tool, chosen), me.id());
                return path(course, assignment);
            });
            if (done.isPresent()) {
                return "redirect:" + done.get();
            }
        }
        response.setStatus(HttpStatus.UNPROCESSABLE_CONTENT.value());
        return page(course, found, Map.of(), errors, model);
    }

    private static String path(CourseId course, AssignmentId assignment) {
        return "/courses/" + course + "/assignments/" + assignment;
    }

    private DueAssignment found(CourseId course, AssignmentId assignment) {
        Course one = courses.find(course).orElseThrow(() -> new NotFoundException("course"));
        return dueDates.find(assignment)
                .filter(found -> found.course().equals(one.code()))
                .orElseThrow(() -> new NotFoundException("assignment"));
    }

    private String page(
            CourseId id, DueAssignment found, Map<String, String> typed, Map<String, String> errors, Model model) {
        Needs now = needs.of(found.id());
        List<Criteria.Criterion> standing = criteria.of(found.id());
        model.addAttribute("courseId", id);
        model.addAttribute("assignment", found);
        model.addAttribute(
                "dues",
                found.sections().stream()
                        .map(section -> new Due(section.code(), labTime.full(section.due())))
                        .toList());
        model.addAttribute("criteria", standing);
        model.addAttribute(
                "points",
                standing.stream()
                        .map(Criteria.Criterion::points)
                        .filter(Objects::nonNull)
                        .mapToInt(Integer::intValue)
                        .sum());
        model.addAttribute("needs", now);
        model.addAttribute("tools", choices.tools());
        model.addAttribute("features", choices.features(now));
        model.addAttribute("fitting", choices.fitting(now));
        model.addAttribute("typed", typed);
        model.addAttribute("errors", errors);
        return "booking/assignment";
    }
}
