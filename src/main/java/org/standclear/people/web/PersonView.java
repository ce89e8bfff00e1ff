package org.standclear.people.web;

import org.standclear.people.Person;
import org.standclear.platform.ids.PersonId;

/** A person as lists show them. */
record PersonView(PersonId id, String login, String printedName, String roles, boolean active) {

    static PersonView of(Person person) {
        return new PersonView(
                person.id(), person.login(), person.printedName(), RoleChoices.words(person.roles()), person.active());
    }
}
