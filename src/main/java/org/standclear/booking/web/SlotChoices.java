package org.standclear.booking.web;

import java.time.Instant;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.stream.Collectors;
import org.jspecify.annotations.Nullable;
import org.springframework.stereotype.Component;
import org.standclear.booking.Booking;
import org.standclear.booking.Bookings;
import org.standclear.booking.CellFit;
import org.standclear.cell.Cell;
import org.standclear.cell.CellState;
import org.standclear.people.Assignment;
import org.standclear.people.Authorisations;
import org.standclear.people.Courses;
import org.standclear.people.Duty;
import org.standclear.people.Enrolment;
import org.standclear.people.Person;
import org.standclear.people.Teams;
import org.standclear.platform.ids.PersonId;
import org.standclear.platform.time.LabTime;

/** What can be chosen on the booking form: who attends, and what the run is for. */
@Component
class SlotChoices {

    private final Authorisations authorisations;
    private final Courses courses;
    private final Bookings bookings;
    private final CellFit fit;
    private final Teams teams;
    private final LabTime labTime;

    SlotChoices(
            Authorisations authorisations,
            Courses courses,
            Bookings bookings,
            CellFit fit,
            Teams teams,
            LabTime labTime) {
        this.authorisations = authorisations;
        this.courses = courses;
        this.bookings = bookings;
        this.fit = fit;
        this.teams = teams;
        this.labTime = labTime;
    }

    /** People who may attend there for the whole time: "needs one" first, then partners, then the others by name. */
    Map<String, String> attendants(Cell cell, PersonId operator, Instant from, Instant until) {
        Map<String, String> choices = new LinkedHashMap<>();
        choices.put("", "Needs one: lab staff or somebody else will be named");
        Set<PersonId> partners = teams.partnersOf(operator);
        Set<PersonId> toTheEnd = authorisations.holders(Duty.ATTENDANT, cell.id(), until.minusSeconds(1)).stream()
                .map(Person::id)
                .collect(Collectors.toSet());
        List<Person> may = authorisations.holders(Duty.ATTENDANT, cell.id(), from).stream()
                .filter(person -> toTheEnd.contains(person.id()))
                .filter(person -> !person.id().equals(operator))
                .filter(person -> cell.state() != CellState.RESTRICTED || person.isLabStaff())
                .toList();
        may.stream()
                .filter(person -> partners.contains(person.id()))
                .forEach(person -> choices.put(person.id().toString(), person.printedName() + " (your partner)"));
        may.forEach(person -> choices.putIfAbsent(person.id().toString(), words(person)));
        return choices;
    }

    private static String words(Person person) {
        return person.isLabStaff() ? person.printedName() + " (lab staff)" : person.printedName();
    }

    /**
     * What is due for the operator, then the courses, then neither; last what was due before the slot or cannot be done on
     * that cell.
     */
    Map<String, String> purposes(PersonId operator, @Nullable Cell cell, Instant start) {
        Map<String, String> choices = new LinkedHashMap<>();
        Map<String, String> late = new LinkedHashMap<>();
        for (Assignment assignment : courses.assignmentsOf(operator)) {
            boolean after = start.isAfter(assignment.due());
            boolean elsewhere =
                    cell != null && !fit.fitting(operator, assignment.id()).test(cell.id());
            (after || elsewhere ? late : choices)
                    .put(
                            "assignment:" + assignment.id(),
                            assignment.title() + ", due " + labTime.day(assignment.due()) + " "
                                    + labTime.time(assignment.due()) + (after ? ": after the due date" : "")
                                    + (elsewhere ? ": this cell has not what it needs" : ""));
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

    /** The people who attended the operator's last bookings, so that the pair need not search; else a partner of the team. */
    String usualAttendant(PersonId operator, Map<String, String> attendants, Instant now) {
        List<Booking> latest = bookings.of(operator, now);
        return latest.stream()
                .filter(booking -> booking.operator().equals(operator) && booking.attendant() != null)
                .map(booking -> String.valueOf(booking.attendant()))
                .filter(attendants::containsKey)
                .findFirst()
                .orElseGet(() -> partner(operator, attendants));
    }

    private String partner(PersonId operator, Map<String, String> attendants) {
        Set<PersonId> partners = teams.partnersOf(operator);
        return attendants.keySet().stream()
                .filter(id ->
                        partners.stream().anyMatch(partner -> partner.toString().equals(id)))
                .findFirst()
                .orElse("");
    }
}
