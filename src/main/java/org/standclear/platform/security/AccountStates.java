package org.standclear.platform.security;

import java.util.EnumSet;
import java.util.LinkedHashMap;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import org.standclear.platform.ids.LabId;
import org.standclear.platform.ids.PersonId;

/** Says how an account stands now, so that running sessions follow a change at their next request. */
public interface AccountStates {

    /** The account as it is now; empty when it is closed or unknown. */
    Optional<AccountState> of(PersonId person);

    /**
     * What a session has to know about its account.
     *
     * @param roles in each lab that the person has a part in
     */
    record AccountState(String printedName, Map<LabId, Set<Role>> roles, boolean mustChangePassword) {

        public AccountState {
            Map<LabId, Set<Role>> copy = new LinkedHashMap<>();
            roles.forEach((lab, in) -> copy.put(lab, Set.copyOf(in)));
            roles = Map.copyOf(copy);
        }

        /** Whether the account is an administrator's: those belong to every lab. */
        public boolean isAdministrator() {
            return roles.values().stream().anyMatch(in -> in.contains(Role.ADMINISTRATOR));
        }

        /** What the person is in that lab; nobody, when there is nothing. */
        public Set<Role> in(LabId lab) {
            Set<Role> here = EnumSet.noneOf(Role.class);
            here.addAll(roles.getOrDefault(lab, Set.of()));
            here.remove(Role.ADMINISTRATOR);
            if (isAdministrator()) {
                here.add(Role.ADMINISTRATOR);
            }
            return here;
        }

        /** Whether the person has a part in the lab besides being its administrator. */
        public boolean worksIn(LabId lab) {
            return roles.getOrDefault(lab, Set.of()).stream().anyMatch(role -> role != Role.ADMINISTRATOR);
        }
    }
}
