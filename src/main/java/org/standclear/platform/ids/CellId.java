package org.standclear.platform.ids;

import java.io.Serializable;
import java.util.UUID;

/** Names a robot cell. */
public record CellId(UUID value) implements Id, Serializable {

    /** A new id, ordered by time of creation. */
    public static CellId next() {
        return new CellId(Id.newValue());
    }

    /** Reads the text form; throws IllegalArgumentException when it is not a UUID. */
    public static CellId of(String text) {
        return new CellId(Id.parse(text));
    }

    @Override
    public String toString() {
        return value.toString();
    }
}
