package org.standclear.platform.ids;

import java.io.Serializable;
import java.util.UUID;

/** Names one stored answer of the check. */
public record AnswerId(UUID value) implements Id, Serializable {

    /** A new id, ordered by time of creation. */
    public static AnswerId next() {
        return new AnswerId(Id.newValue());
    }

    /** Reads the text form; throws IllegalArgumentException when it is not a UUID. */
    public static AnswerId of(String text) {
        return new AnswerId(Id.parse(text));
    }

    @Override
    public String toString() {
        return value.toString();
    }
}
