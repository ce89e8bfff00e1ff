package org.standclear.people;

import java.time.Instant;
import java.util.List;
import org.standclear.platform.ids.CellId;
import org.standclear.platform.ids.PersonId;

/** Who is authorised for what, and until when. */
public interface Authorisations {

    /** Whether the person holds the duty for the cell at that instant; inactive people hold none. */
    boolean holds(PersonId person, Duty duty, CellId cell, Instant at);

    /** All authorisations of a person, the expired ones too, latest expiry first. */
    List<Authorisation> of(PersonId person);

    /** Active people who hold the duty for the cell at that instant, by printed name. */
    List<Person> holders(Duty duty, CellId cell, Instant at);
}
