package org.standclear.platform.ids;

import java.io.Serializable;
import java.util.UUID;

/** Names a person with an account. */
public record PersonId(UUID value) implements Id, Serializable {

    /** A new id, ordered by time of creation. */
    public static PersonId next() {
        return new PersonId(Id.newValue());
    }

    /** Reads the text form; throws IllegalArgumentException when it is not a UUID. */
    public static PersonId of(String text) {
        return new PersonId(Id.parse(text));
    }

    @Override
    public String toString() {
        return value.toString();
    }
}
