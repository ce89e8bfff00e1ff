package org.standclear.incident;

import java.time.Instant;
import java.util.List;
import org.standclear.platform.ids.IncidentId;
import org.standclear.platform.ids.PersonId;

/** The restricted part of an incident. Who opens it is kept; its text stands nowhere else. */
public interface MedicalNotes {

    /** The notes, first to last; keeps that the person opened them. The caller has checked that the person may. */
    List<Note> open(IncidentId incident, PersonId by);

    /** Adds a note; the caller has checked that the person may. */
    IncidentOutcome write(IncidentId incident, String words, PersonId by);

    /** Who opened them, latest first. */
    List<Opened> opened(IncidentId incident);

    /** How many notes there are; does not count as opening them. */
    int count(IncidentId incident);

    /** One note. */
    record Note(String words, PersonId by, Instant at) {}

    /** That somebody opened them. */
    record Opened(PersonId by, Instant at) {}
}
