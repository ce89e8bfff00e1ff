package org.standclear.demo;

import java.time.LocalTime;
import java.time.ZoneId;
import java.util.List;

/** The college's second lab in the demo: far away, small, with staff, hours and cells of its own. */
record SecondLabSeed(
        String college,
        String room,
        String name,
        ZoneId zone,
        String emergencyNumber,
        String firstAider,
        String stopMap,
        List<Hours> opens,
        List<LabSeed.Account> accounts,
        String instructor,
        String technician,
        List<PersonSeed> people,
        List<CoursesSeed.CourseSeed> courses,
        List<LabSeed.Period> duty,
        WeekSeed week) {

    /** A period of every day from Monday to Friday. */
    record Hours(LocalTime from, LocalTime until) {}
}
