package org.standclear.people;

import java.util.Collection;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.standclear.platform.ids.PersonId;
import org.standclear.platform.security.Role;

/** Finds people. */
public interface People {

    /** The name of an id that nobody has. */
    String UNKNOWN = "unknown";

    /** The person of that id, active or not. */
    Optional<Person> find(PersonId id);

    /** The person with that sign-in name, active or not. */
    Optional<Person> byLogin(String login);

    /** The people of those ids; ids that nobody has are left out. */
    Map<PersonId, Person> all(Collection<PersonId> ids);

    /** All active people with the role, by printed name. */
    List<Person> with(Role role);

    /** The printed name, or "unknown" for an id nobody has. */
    default String printedName(PersonId id) {
        return find(id).map(Person::printedName).orElse(UNKNOWN);
    }

    /** The same of each of these, asked together. */
    default Map<PersonId, String> printedNames(Collection<PersonId> ids) {
        Map<PersonId, Person> found = all(ids);
        Map<PersonId, String> names = new HashMap<>();
        ids.forEach(id -> {
            Person person = found.get(id);
            names.put(id, person == null ? UNKNOWN : person.printedName());
        });
        return names;
    }
}
