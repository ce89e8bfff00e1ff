package org.standclear.people.accounts;

import java.util.Collection;
import java.util.Map;
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

    @Override
    public PrintedNames knowing(Collection<PersonId> asked) {
        return new Known(this, people.printedNames(asked));
    }

    /** Names that were asked before; of anybody else it asks. */
    private record Known(PrintedNames others, Map<PersonId, String> names) implements PrintedNames {

        @Override
        public String of(PersonId person) {
            String name = names.get(person);
            return name == null ? others.of(person) : name;
        }

        @Override
        public PrintedNames knowing(Collection<PersonId> asked) {
            return names.keySet().containsAll(asked) ? this : others.knowing(asked);
        }
    }
}
