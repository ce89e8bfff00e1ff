package org.standclear.people;

import org.standclear.platform.ids.CourseId;
import org.standclear.platform.ids.PersonId;
import org.standclear.platform.ids.SectionId;

/** That a person takes a course in a section. */
public record Enrolment(PersonId person, CourseId course, SectionId section, String courseCode, String sectionCode) {}
