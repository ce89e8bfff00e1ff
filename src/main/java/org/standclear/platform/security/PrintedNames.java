package org.standclear.platform.security;

import java.util.Collection;
import org.standclear.platform.ids.PersonId;

/** Printed names of people, for features that know people by id only. */
public interface PrintedNames {

    /** The printed name, or "unknown" for an id nobody has. */
    String of(PersonId person);

    /** The same, with the names of these people asked together, for a page or list that shows many. */
    PrintedNames knowing(Collection<PersonId> people);
}
