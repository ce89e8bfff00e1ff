package org.standclear.report.web;

import java.util.HashMap;
import java.util.Map;
import org.jspecify.annotations.Nullable;
import org.standclear.people.People;
import org.standclear.platform.ids.PersonId;

/** What people are called on one paper: by name, or told apart by numbers while free text is left out. */
final class Called {

    private static final String LEFT_OUT = "left out";

    private final People people;
    private final boolean withNames;
    private final Map<PersonId, String> numbered = new HashMap<>();

    Called(People people, boolean withNames) {
        this.people = people;
        this.withNames = withNames;
    }

    boolean withNames() {
        return withNames;
    }

    String name(@Nullable PersonId person) {
        if (person == null) {
            return "";
        }
        return withNames
                ? people.printedName(person)
                : numbered.computeIfAbsent(person, id -> "person " + (numbered.size() + 1));
    }

    String text(String words) {
        return withNames || words.isEmpty() ? words : LEFT_OUT;
    }
}
