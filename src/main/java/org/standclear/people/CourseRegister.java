package org.standclear.people;

import java.time.Instant;
import java.util.Map;
import org.jspecify.annotations.Nullable;
import org.standclear.platform.ids.AssignmentId;
import org.standclear.platform.ids.CourseId;
import org.standclear.platform.ids.PersonId;
import org.standclear.platform.ids.SectionId;

/** Adds courses, sections, students and assignments, and changes the limits of courses. */
public interface CourseRegister {

    /** Adds a course with the plain limits: override 50 %, no tool speed of its own. */
    Outcome<CourseId> addCourse(String code, String title, @Nullable PersonId by);

    /** Adds a section to a course. */
    Outcome<SectionId> addSection(CourseId course, String code, @Nullable PersonId by);

    /** Enrols a person in a section; enrolling twice changes nothing. */
    Outcome<SectionId> enrol(PersonId person, SectionId section, @Nullable PersonId by);

    /** Adds an assignment with the due date of each section that has it. */
    Outcome<AssignmentId> addAssignment(NewAssignment assignment);

    /** Changes the limits that a course sets on its students' programs. */
    Outcome<CourseId> changeLimits(NewLimits limits);

    /**
     * Something to hand in.
     *
     * @param minimumRuns how many closed-out runs it takes, 1 to 100
     */
    record NewAssignment(
            CourseId course,
            String title,
            int minimumRuns,
            Map<SectionId, Instant> due,
            @Nullable PersonId by) {

        public NewAssignment {
            due = Map.copyOf(due);
        }
    }

    /**
     * Limits an instructor wants for a course.
     *
     * @param overridePercent above 0, at most 100
     * @param toolSpeedMmS above 0, at most 10 000; null when the course sets none
     * @param seenVersion the course's version that the form showed
     */
    record NewLimits(
            CourseId course,
            double overridePercent,
            @Nullable Double toolSpeedMmS,
            String reason,
            int seenVersion,
            PersonId by) {}

    /**
     * What came of it.
     *
     * @param <T> the kind of id
     */
    sealed interface Outcome<T> {

        /** It is stored under that id. */
        record Done<T>(T id) implements Outcome<T> {}

        /** Nothing was stored; says why, and for which field: {@code code}, {@code title}, {@code reason}, ... */
        record Refused<T>(String field, String says) implements Outcome<T> {}

        /** Somebody changed the course since the form was shown; the course as stored now. */
        record Stale<T>(Course current, int version) implements Outcome<T> {}
    }
}
