package org.standclear.platform.ids;

import java.io.Serializable;
import java.util.UUID;

/** Names a course. */
public record CourseId(UUID value) implements Id, Serializable {

    /** A new id, ordered by time of creation. */
    public static CourseId next() {
        return new CourseId(Id.newValue());
    }

    /** Reads the text form; throws IllegalArgumentException when it is not a UUID. */
    public static CourseId of(String text) {
        return new CourseId(Id.parse(text));
    }

    @Override
    public String toString() {
        return value.toString();
    }
}
