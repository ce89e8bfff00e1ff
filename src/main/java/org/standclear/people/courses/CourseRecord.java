package org.standclear.people.courses;

import org.jspecify.annotations.Nullable;
import org.springframework.stereotype.Component;
import org.standclear.people.Course;
import org.standclear.people.CourseRegister.NewAssignment;
import org.standclear.people.People;
import org.standclear.platform.ids.PersonId;
import org.standclear.platform.ids.SectionId;
import org.standclear.platform.lab.Labs;
import org.standclear.trail.Trail;
import org.standclear.trail.TrailEntry;

/** What the lab's record keeps about courses. */
@Component
class CourseRecord {

    private final Trail trail;
    private final People people;
    private final Labs labs;

    CourseRecord(Trail trail, People people, Labs labs) {
        this.trail = trail;
        this.people = people;
        this.labs = labs;
    }

    void courseAdded(Course course, @Nullable PersonId by) {
        trail.append(entry("people.course_added", course.id(), by, "The course " + course.code() + " was added.")
                .with("title", course.title()));
    }

    void sectionAdded(Course course, String section, @Nullable PersonId by) {
        trail.append(
                entry("people.section_added", course.id(), by, course.code() + " has a new section " + section + "."));
    }

    void enrolled(PersonId person, SectionId section, @Nullable PersonId by) {
        trail.append(entry("people.enrolled", person, by, people.printedName(person) + " was enrolled in a section.")
                .with("section", section));
    }

    void assignmentAdded(Course course, String title, NewAssignment asked) {
        TrailEntry entry = entry(
                        "people.assignment_added",
                        course.id(),
                        asked.by(),
                        course.code() + " has a new assignment \"" + title + "\".")
                .with("minimumRuns", asked.minimumRuns());
        for (var due : asked.due().entrySet()) {
            entry = entry.with("due " + due.getKey(), due.getValue());
        }
        trail.append(entry);
    }

    void limitsChanged(Course before, Course after, String reason, PersonId by) {
        trail.append(
                entry("people.course_limits_changed", after.id(), by, "The limits of " + after.code() + " changed.")
                        .with("before", words(before))
                        .with("after", words(after))
                        .with("reason", reason));
    }

    static String words(Course course) {
        Double speed = course.toolSpeedMmS();
        return "override " + course.overridePercent() + " %, tool speed " + (speed == null ? "none" : speed + " mm/s");
    }

    private TrailEntry entry(String kind, Object subject, @Nullable PersonId by, String words) {
        return TrailEntry.of(labs.theLab().id(), kind, subject, by, words);
    }
}
