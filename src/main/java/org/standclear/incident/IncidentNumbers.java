package org.standclear.incident;

import java.time.Instant;
import java.util.List;
import org.standclear.platform.ids.PersonId;

/** Keeps the numbers of incidents, with who changed them and why. */
public interface IncidentNumbers {

    /** The numbers in force in the lab that the pages serve. */
    IncidentSettings inForce();

    /** The latest changes, latest first; empty while the program's own numbers hold. */
    List<Change> changes(int atMost);

    /** Puts other numbers in force; the caller has checked that the person may. */
    void change(IncidentSettings settings, PersonId by, String reason);

    /** Numbers that were put in force, by whom, when and why. */
    record Change(IncidentSettings settings, PersonId by, Instant at, String reason) {}
}
