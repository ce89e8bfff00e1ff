package org.standclear.platform.ids;

import java.io.Serializable;
import java.util.UUID;

/** Names a lab. */
public record LabId(UUID value) implements Id, Serializable {

    /** A new id, ordered by time of creation. */
    public static LabId next() {
        return new LabId(Id.newValue());
    }

    /** Reads the text form; throws IllegalArgumentException when it is not a UUID. */
    public static LabId of(String text) {
        return new LabId(Id.parse(text));
    }

    @Override
    public String toString() {
        return value.toString();
    }
}
