package org.standclear.people;

import java.time.Instant;
import java.util.Collection;
import java.util.List;
import java.util.Map;
import org.standclear.platform.ids.CellId;
import org.standclear.platform.ids.PersonId;

/** Who is authorised for what, and until when. */
public interface Authorisations {

    /** Whether the person holds the duty for the cell at that instant; inactive people hold none. */
    boolean holds(PersonId person, Duty duty, CellId cell, Instant at);

    /** All authorisations of a person, the expired ones too, latest expiry first. */
    List<Authorisation> of(PersonId person);

    /** The authorisations of several people at once, each person's as {@link #of} has them; people without any are left out. */
    Map<PersonId, List<Authorisation>> ofAll(Collection<PersonId> people);

    /**
     * Those that stand at the first instant and end before the second, soonest first; none of somebody whose duty goes on under
     * another one, and none of inactive people.
     */
    List<Authorisation> ending(Instant from, Instant until);

    /** Active people who hold the duty for the cell at that instant, by printed name. */
    List<Person> holders(Duty duty, CellId cell, Instant at);
}
