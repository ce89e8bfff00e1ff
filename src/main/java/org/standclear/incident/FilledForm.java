package org.standclear.incident;

import java.time.Instant;
import org.jspecify.annotations.Nullable;
import org.standclear.platform.ids.PersonId;

/**
 * One state that the form and classification of an incident had. A change is a new one.
 *
 * @param number from 1, first to last
 * @param by null for one from before the history was kept
 */
public record FilledForm(
        int number,
        IncidentClass kind,
        Incident.Form form,
        @Nullable PersonId by,
        Instant at) {}
