package org.standclear.platform.ids;

import java.io.Serializable;
import java.util.UUID;

/** Names an incident. */
public record IncidentId(UUID value) implements Id, Serializable {

    /** A new id, ordered by time of creation. */
    public static IncidentId next() {
        return new IncidentId(Id.newValue());
    }

    /** Reads the text form; throws IllegalArgumentException when it is not a UUID. */
    public static IncidentId of(String text) {
        return new IncidentId(Id.parse(text));
    }

    @Override
    public String toString() {
        return value.toString();
    }
}
