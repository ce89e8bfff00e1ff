package org.standclear.platform.ids;

import java.io.Serializable;
import java.util.UUID;

/** Names a release. */
public record ReleaseId(UUID value) implements Id, Serializable {

    /** A new id, ordered by time of creation. */
    public static ReleaseId next() {
        return new ReleaseId(Id.newValue());
    }

    /** Reads the text form; throws IllegalArgumentException when it is not a UUID. */
    public static ReleaseId of(String text) {
        return new ReleaseId(Id.parse(text));
    }

    @Override
    public String toString() {
        return value.toString();
    }
}
