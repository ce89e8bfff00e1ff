package org.standclear.booking;

import java.time.Instant;
import java.util.Optional;
import org.springframework.stereotype.Component;
import org.standclear.cell.Cell;
import org.standclear.cell.CellState;
import org.standclear.people.Authorisations;
import org.standclear.people.Duty;
import org.standclear.people.People;
import org.standclear.people.Person;
import org.standclear.platform.ids.PersonId;

/** Who may stand at the e-stop of a run. Not settings: nobody can switch these off. */
@Component
class AttendantRules {

    private final People people;
    private final Authorisations authorisations;

    AttendantRules(People people, Authorisations authorisations) {
        this.people = people;
        this.authorisations = authorisations;
    }

    /** Why this person may not attend; empty when nothing but their calendar could be against it. */
    Optional<String> refusal(Cell cell, PersonId operator, PersonId attendant, Instant at) {
        if (attendant.equals(operator)) {
            return Optional.of(
                    "The operator never attends the own run: name somebody else, or leave it at " + "\"needs one\".");
        }
        Optional<Person> person = people.find(attendant).filter(Person::active);
        if (person.isEmpty()) {
            return Optional.of("There is no such person; choose the attendant from the list.");
        }
        String name = person.get().printedName();
        if (cell.state() == CellState.RESTRICTED && !person.get().isLabStaff()) {
            return Optional.of(cell.name() + " is restricted: only lab staff attend there, and " + name
                    + " is not lab staff. Leave it at \"needs one\".");
        }
        if (!authorisations.holds(attendant, Duty.ATTENDANT, cell.id(), at)) {
            return Optional.of(name + " is not authorised as e-stop attendant on " + cell.name()
                    + " at that time. Choose somebody from the list, or leave it at \"needs one\".");
        }
        return Optional.empty();
    }

    static String busy(String name) {
        return name + " is booked elsewhere at that time, and nobody is in two places. Choose somebody else, or leave "
                + "it at \"needs one\".";
    }
}
