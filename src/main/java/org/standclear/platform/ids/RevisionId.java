package org.standclear.platform.ids;

import java.io.Serializable;
import java.util.UUID;

/** Names one immutable revision of a program. */
public record RevisionId(UUID value) implements Id, Serializable {

    /** A new id, ordered by time of creation. */
    public static RevisionId next() {
        return new RevisionId(Id.newValue());
    }

    /** Reads the text form; throws IllegalArgumentException when it is not a UUID. */
    public static RevisionId of(String text) {
        return new RevisionId(Id.parse(text));
    }

    @Override
    public String toString() {
        return value.toString();
    }
}
