package org.standclear.booking.web;

import java.time.Instant;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import org.springframework.stereotype.Component;
import org.standclear.booking.Booking;
import org.standclear.booking.Bookings;
import org.standclear.cell.Cell;
import org.standclear.cell.CellState;
import org.standclear.people.Assignment;
import org.standclear.people.Authorisations;
import org.standclear.people.Courses;
import org.standclear.people.Duty;
import org.standclear.people.Enrolment;
import org.standclear.people.Person;
import org.standclear.platform.ids.PersonId;
import org.standclear.platform.time.LabTime;

/** What can be chosen on the booking form: who attends, and what the run is for. */
@Component
class SlotChoices {

    private final Authorisations authorisations;
    private final Courses courses;
    private final Bookings bookings;
    private final LabTime labTime;

    SlotChoices(Authorisations authorisations, Courses courses, Bookings bookings, LabTime labTime) {
        this.authorisations = authorisations;
        this.courses = courses;
        this.bookings = bookings;
        this.labTime = labTime;
    }

    /** People who may attend there and then, by name, and "needs one" first. */
    Map<String, String> attendants(Cell cell, PersonId operator, Instant at) {
        Map<String, String> choices = new LinkedHashMap<>();
        choices.put("", "Needs one: lab staff or somebody else will be named");
        authorisations.holders(Duty.ATTENDANT, cell.id(), at).stream()
                .filter(person -> !person.id().equals(operator))
                .filter(person -> cell.state() != CellState.RESTRICTED || person.isLabStaff())
                .forEach(person -> choices.put(person.id().toString(), words(person)));
        return choices;
    }

    private static String words(Person person) {
        return person.isLabStaff() ? person.printedName() + " (lab staff)" : person.printedName();
    }

    /** What is due for the operator, then the courses, then neither; last what was due before the slot. */
    Map<String, String> purposes(PersonId operator, Instant start) {
        Map<String, String> choices = new LinkedHashMap<>();
        Map<String, String> late = new LinkedHashMap<>();
        for (Assignment assignment : courses.assignmentsOf(operator)) {
            boolean after = start.isAfter(assignment.due());
            (after ? late : choices)
                    .put(
                            "assignment:" + assignment.id(),
                            assignment.title() + ", due " + labTime.day(assignment.due()) + " "
                                    + labTime.time(assignment.due()) + (after ? ": after the due date" : ""));
        }
        List<Enrolment> enrolments = courses.enrolmentsOf(operator);
        for (Enrolment enrolment : enrolments) {
            choices.put(
                    "course:" + enrolment.course(),
                    enrolment.courseCode() + "-" + enrolment.sectionCode() + ", practice");
        }
        choices.put(
                "",
                "Neither course nor assignment"
                        + (enrolments.isEmpty() ? "" : ": the strictest limits of all courses count"));
        choices.putAll(late);
        return choices;
    }

    /** The people who attended the operator's last bookings, so that the pair need not search. */
    String usualAttendant(PersonId operator, Map<String, String> attendants, Instant now) {
        List<Booking> latest = bookings.of(operator, now);
        return latest.stream()
                .filter(booking -> booking.operator().equals(operator) && booking.attendant() != null)
                .map(booking -> String.valueOf(booking.attendant()))
                .filter(attendants::containsKey)
                .findFirst()
                .orElse("");
    }
}
