package org.standclear.platform.ids;

import java.io.Serializable;
import java.util.UUID;

/** Names a program, all its revisions together. */
public record ProgramId(UUID value) implements Id, Serializable {

    /** A new id, ordered by time of creation. */
    public static ProgramId next() {
        return new ProgramId(Id.newValue());
    }

    /** Reads the text form; throws IllegalArgumentException when it is not a UUID. */
    public static ProgramId of(String text) {
        return new ProgramId(Id.parse(text));
    }

    @Override
    public String toString() {
        return value.toString();
    }
}
