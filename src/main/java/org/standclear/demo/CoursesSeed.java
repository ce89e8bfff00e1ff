package org.standclear.demo;

import java.time.LocalTime;
import java.util.List;
import java.util.Map;
import org.jspecify.annotations.Nullable;

/** The courses of the demo. */
record CoursesSeed(List<CourseSeed> courses) {

    /** A course with its sections and what is to be handed in. */
    record CourseSeed(
            String code,
            String title,
            String by,
            List<String> sections,
            @Nullable AssignmentSeed assignment) {}

    /** An assignment with a due date for each section. */
    record AssignmentSeed(String title, int runs, Map<String, Due> due) {}

    /** When a section has to hand in; week is "next" for the week after. */
    record Due(WeekTimes.Day day, LocalTime at, @Nullable String week) {

        int weeksAhead() {
            return "next".equals(week) ? 1 : 0;
        }
    }
}
