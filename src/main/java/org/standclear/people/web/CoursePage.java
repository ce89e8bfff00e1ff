package org.standclear.people.web;

import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.UUID;
import org.springframework.stereotype.Component;
import org.springframework.ui.Model;
import org.standclear.people.Course;
import org.standclear.people.Invitations;
import org.standclear.people.People;
import org.standclear.people.courses.CourseList;
import org.standclear.people.courses.CourseList.Section;
import org.standclear.people.courses.CourseList.VersionedCourse;
import org.standclear.platform.ids.CourseId;
import org.standclear.platform.security.Role;
import org.standclear.platform.security.SignedInPerson;
import org.standclear.platform.time.LabTime;
import org.standclear.platform.web.NotFoundException;

/** Puts together what the page of one course shows; several forms stand on it and come back to it when refused. */
@Component
class CoursePage {

    private final CourseList courses;
    private final Invitations invitations;
    private final People people;
    private final LabTime labTime;

    CoursePage(CourseList courses, Invitations invitations, People people, LabTime labTime) {
        this.courses = courses;
        this.invitations = invitations;
        this.people = people;
        this.labTime = labTime;
    }

    VersionedCourse course(CourseId id) {
        return courses.find(id).orElseThrow(() -> new NotFoundException("course"));
    }

    String show(CourseId id, SignedInPerson me, Typed typed, Model model) {
        VersionedCourse stored = course(id);
        List<Section> sections = courses.sections(id);
        model.addAttribute("course", stored.course());
        model.addAttribute("version", stored.version());
        model.addAttribute("overrideWords", LimitWords.override(stored.course().overridePercent()));
        model.addAttribute("speedWords", LimitWords.toolSpeed(stored.course().toolSpeedMmS()));
        model.addAttribute("sections", sections);
        model.addAttribute("sectionChoices", choices(sections));
        model.addAttribute("invited", invited(id));
        model.addAttribute(
                "dues",
                courses.dues(id).stream()
                        .map(due -> new DueView(
                                due.assignment().toString(),
                                due.title(),
                                due.minimumRuns(),
                                due.section(),
                                labTime.full(due.due())))
                        .toList());
        model.addAttribute(
                "changes",
                courses.changes(id).stream()
                        .map(change -> new ChangeView(
                                labTime.full(change.at()),
                                LimitWords.override(change.overridePercent()),
                                LimitWords.toolSpeed(change.toolSpeedMmS()),
                                people.printedName(change.by()),
                                change.reason()))
                        .toList());
        model.addAttribute("mayTeach", me.is(Role.INSTRUCTOR));
        model.addAttribute("values", values(stored.course(), typed));
        model.addAttribute("errors", typed.errors());
        return "people/course";
    }

    private List<InvitedView> invited(CourseId id) {
        return invitations.waiting(id).stream()
                .map(one -> new InvitedView(
                        one.id(),
                        one.login(),
                        "section " + one.section() + ", asked by " + people.printedName(one.by()) + ", "
                                + labTime.full(one.at())))
                .toList();
    }

    private static Map<String, String> choices(List<Section> sections) {
        Map<String, String> choices = new LinkedHashMap<>();
        sections.forEach(section -> choices.put(section.id().toString(), section.code()));
        return choices;
    }

    /** What stands in the forms: what was typed, else what is stored. */
    private static Map<String, String> values(Course course, Typed typed) {
        Map<String, String> values = new HashMap<>();
        Double speed = course.toolSpeedMmS();
        values.put("overridePercent", LimitWords.number(course.overridePercent()));
        values.put("toolSpeedMmS", speed == null ? "" : LimitWords.number(speed));
        values.put("minimumRuns", "3");
        values.put("dueTime", "17:00");
        values.putAll(typed.values());
        return values;
    }

    /** A sign-in name that was asked into a section and has not answered. */
    record InvitedView(UUID id, String login, String words) {}

    /** What one section has to hand in. */
    record DueView(String assignment, String title, int minimumRuns, String section, String due) {}

    /** Limits as somebody set them. */
    record ChangeView(String at, String override, String toolSpeed, String by, String reason) {}
}
