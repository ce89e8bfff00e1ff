package org.standclear.platform.security;

import java.util.Optional;
import java.util.Set;
import org.standclear.platform.ids.PersonId;

/** Says how an account stands now, so that running sessions follow a change at their next request. */
public interface AccountStates {

    /** The account as it is now; empty when it is closed or unknown. */
    Optional<AccountState> of(PersonId person);

    /** What a session has to know about its account. */
    record AccountState(String printedName, Set<Role> roles, boolean mustChangePassword) {

        public AccountState {
            roles = Set.copyOf(roles);
        }
    }
}
