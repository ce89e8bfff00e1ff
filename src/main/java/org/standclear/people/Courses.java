package org.standclear.people;

import java.util.List;
import java.util.Optional;
import org.standclear.platform.ids.AssignmentId;
import org.standclear.platform.ids.CourseId;
import org.standclear.platform.ids.PersonId;

/** Courses, their sections, who is enrolled, and what is due. */
public interface Courses {

    /** The course of that id. */
    Optional<Course> find(CourseId id);

    /** All courses, by code. */
    List<Course> all();

    /** The sections a person is enrolled in. */
    List<Enrolment> enrolmentsOf(PersonId person);

    /** The courses a person takes, each once, by code. */
    List<Course> takenBy(PersonId person);

    /** What is due for a person through their sections, earliest due date first. */
    List<Assignment> assignmentsOf(PersonId person);

    /** The assignment as the person's section has it; empty when it is not theirs. */
    Optional<Assignment> assignmentOf(PersonId person, AssignmentId assignment);
}
