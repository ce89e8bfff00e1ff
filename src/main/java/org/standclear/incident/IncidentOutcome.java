package org.standclear.incident;

import org.standclear.platform.ids.IncidentId;

/** What came of an act on an incident. */
public sealed interface IncidentOutcome {

    /** It is kept. */
    record Done(IncidentId incident) implements IncidentOutcome {}

    /** Somebody else changed it after the form was opened; nothing was kept. */
    record Stale(Incident now) implements IncidentOutcome {}

    /**
     * It does not fit; nothing was kept.
     *
     * @param field of the form that has to change; empty when it is about the whole
     * @param says what is the matter, and who can mend it
     */
    record Refused(String field, String says) implements IncidentOutcome {}
}
