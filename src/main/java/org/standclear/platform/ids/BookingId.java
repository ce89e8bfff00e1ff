package org.standclear.platform.ids;

import java.io.Serializable;
import java.util.UUID;

/** Names a booking. */
public record BookingId(UUID value) implements Id, Serializable {

    /** A new id, ordered by time of creation. */
    public static BookingId next() {
        return new BookingId(Id.newValue());
    }

    /** Reads the text form; throws IllegalArgumentException when it is not a UUID. */
    public static BookingId of(String text) {
        return new BookingId(Id.parse(text));
    }

    @Override
    public String toString() {
        return value.toString();
    }
}
