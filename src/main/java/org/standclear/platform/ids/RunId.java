package org.standclear.platform.ids;

import java.io.Serializable;
import java.util.UUID;

/** Names a run. */
public record RunId(UUID value) implements Id, Serializable {

    /** A new id, ordered by time of creation. */
    public static RunId next() {
        return new RunId(Id.newValue());
    }

    /** Reads the text form; throws IllegalArgumentException when it is not a UUID. */
    public static RunId of(String text) {
        return new RunId(Id.parse(text));
    }

    @Override
    public String toString() {
        return value.toString();
    }
}
