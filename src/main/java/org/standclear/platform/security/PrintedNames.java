package org.standclear.platform.security;

import org.standclear.platform.ids.PersonId;

/** Printed names of people, for features that know people by id only. */
public interface PrintedNames {

    /** The printed name, or "unknown" for an id nobody has. */
    String of(PersonId person);
}
