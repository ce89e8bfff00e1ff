package org.standclear.people.accounts;

import org.springframework.stereotype.Component;
import org.standclear.people.People;
import org.standclear.platform.ids.PersonId;
import org.standclear.platform.security.PrintedNames;

/** Answers from the accounts; templates reach it as {@code @printedNames}. */
@Component("printedNames")
class PrintedNamesOfPeople implements PrintedNames {

    private final People people;

    PrintedNamesOfPeople(People people) {
        this.people = people;
    }

    @Override
    public String of(PersonId person) {
        return people.printedName(person);
    }
}
