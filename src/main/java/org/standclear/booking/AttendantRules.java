package org.standclear.booking;

import java.util.Optional;
import org.standclear.cell.Cell;
import org.standclear.cell.CellState;
import org.standclear.people.Duty;
import org.standclear.people.Person;
import org.standclear.platform.ids.PersonId;

/** Who may stand at the e-stop of a run. Not settings: nobody can switch these off. */
final class AttendantRules {

    private AttendantRules() {}

    /** Why this person may not attend; empty when nothing but their calendar could be against it. */
    static Optional<String> refusal(Parties parties, Cell cell, PersonId operator, PersonId attendant, Slot turn) {
        if (attendant.equals(operator)) {
            return Optional.of(
                    "The operator never attends their own run: name somebody else, or leave it at " + "\"needs one\".");
        }
        Optional<Person> person = parties.person(attendant).filter(Person::active);
        if (person.isEmpty()) {
            return Optional.of("There is no such person; choose the attendant from the list.");
        }
        String name = person.get().printedName();
        if (cell.state() == CellState.RESTRICTED && !person.get().isLabStaff()) {
            return Optional.of(cell.name() + " is restricted: only lab staff attend there, and " + name
                    + " is not lab staff. Leave it at \"needs one\".");
        }
        if (!mayAttend(parties, attendant, turn)) {
            return Optional.of(name + " is not authorised as e-stop attendant on " + cell.name()
                    + " for the whole of that time. Choose somebody from the list, or leave it at \"needs one\".");
        }
        return Optional.empty();
    }

    /** Whether the person is authorised for the whole of the turn, like an operator. */
    private static boolean mayAttend(Parties parties, PersonId attendant, Slot turn) {
        return parties.hold(attendant, Duty.ATTENDANT, turn.cell(), turn.start())
                && parties.hold(
                        attendant, Duty.ATTENDANT, turn.cell(), turn.end().minusSeconds(1));
    }

    static String busy(String name) {
        return name + " is booked elsewhere at that time, and nobody is in two places. Choose somebody else, or leave "
                + "it at \"needs one\".";
    }
}
