package org.standclear.platform.ids;

import java.io.Serializable;
import java.util.UUID;

/** Names a section of a course. */
public record SectionId(UUID value) implements Id, Serializable {

    /** A new id, ordered by time of creation. */
    public static SectionId next() {
        return new SectionId(Id.newValue());
    }

    /** Reads the text form; throws IllegalArgumentException when it is not a UUID. */
    public static SectionId of(String text) {
        return new SectionId(Id.parse(text));
    }

    @Override
    public String toString() {
        return value.toString();
    }
}
