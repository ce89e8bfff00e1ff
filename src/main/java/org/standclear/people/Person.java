package org.standclear.people;

import java.util.Set;
import org.standclear.platform.ids.PersonId;
import org.standclear.platform.security.Role;

/** A person with an account, as other features see them. */
public record Person(PersonId id, String login, String printedName, Set<Role> roles, boolean active) {

    public Person {
        roles = Set.copyOf(roles);
    }

    /** Whether the person has the role. */
    public boolean is(Role role) {
        return roles.contains(role);
    }

    /** Whether the person is a technician or an instructor. */
    public boolean isLabStaff() {
        return is(Role.TECHNICIAN) || is(Role.INSTRUCTOR);
    }
}
