package org.standclear.incident.records;

import java.time.Instant;
import java.time.ZoneId;
import org.jspecify.annotations.Nullable;
import org.standclear.incident.IncidentClass;
import org.standclear.incident.IncidentSettings;

/** When forms are due in a lab, by its zone and the numbers in force. */
record DueTimes(ZoneId zone, IncidentSettings numbers) {

    /** The last instant for the form of that class; null when there is no form. */
    @Nullable
    Instant of(IncidentClass kind, Instant from) {
        return kind.formDue().after(from, zone, numbers);
    }
}
