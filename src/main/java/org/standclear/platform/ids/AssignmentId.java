package org.standclear.platform.ids;

import java.io.Serializable;
import java.util.UUID;

/** Names an assignment of a course. */
public record AssignmentId(UUID value) implements Id, Serializable {

    /** A new id, ordered by time of creation. */
    public static AssignmentId next() {
        return new AssignmentId(Id.newValue());
    }

    /** Reads the text form; throws IllegalArgumentException when it is not a UUID. */
    public static AssignmentId of(String text) {
        return new AssignmentId(Id.parse(text));
    }

    @Override
    public String toString() {
        return value.toString();
    }
}
