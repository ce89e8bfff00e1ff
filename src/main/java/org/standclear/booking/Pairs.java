package org.standclear.booking;

import java.time.Instant;
import java.util.List;
import org.standclear.platform.ids.CourseId;
import org.standclear.platform.ids.LabId;
import org.standclear.platform.ids.PersonId;

/** Who worked with whom, as whoever keeps the run log reads it; bookings yet to come are told apart from runs. */
public interface Pairs {

    /** Runs of one person, in either part; who worked together last comes first. */
    List<Together> ofPerson(PersonId person);

    /** Runs for the course, by operator. */
    List<Together> ofCourse(CourseId course);

    /** Bookings of one person that have not begun and hold their slot, in either part; the next comes first. */
    List<Ahead> aheadOf(PersonId person);

    /** The same for the course, by operator. */
    List<Ahead> aheadOf(CourseId course);

    /** That the attendant stood at the e-stop in so many of the operator's runs, from the start or after a handover. */
    record Together(PersonId operator, PersonId attendant, int runs, Instant last) {}

    /** That so many bookings of one lab name the two. */
    record Ahead(PersonId operator, PersonId attendant, LabId lab, int bookings, Instant next) {}
}
