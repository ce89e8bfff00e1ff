package org.standclear.people;

import java.util.Map;
import java.util.Set;
import org.standclear.platform.ids.PersonId;

/** Where people get their e-mail: answered by who keeps messages. An address that a person set is never overwritten. */
public interface MailAddresses {

    /** Whether something like this can be written to. */
    boolean usable(String address);

    /** Everybody who has an address, or who said that they want none. */
    Set<PersonId> known();

    /** Keeps these for whoever has none. */
    void keep(Map<PersonId, String> addresses);

    /** Forgets these where they stand as they were kept; whoever changed anything about them keeps theirs. */
    void forget(Map<PersonId, String> addresses);
}
