package org.standclear.booking;

import java.time.Instant;
import java.util.List;
import org.standclear.platform.ids.CourseId;
import org.standclear.platform.ids.PersonId;

/** Who worked with whom: counted from bookings whose run was started. */
public interface Pairs {

    /** Of one person, in either part; who worked together last comes first. */
    List<Together> ofPerson(PersonId person);

    /** Of the course, by operator. */
    List<Together> ofCourse(CourseId course);

    /** That the attendant stood at the operator's e-stop so many times. */
    record Together(PersonId operator, PersonId attendant, int runs, Instant last) {}
}
