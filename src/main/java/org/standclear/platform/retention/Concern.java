package org.standclear.platform.retention;

import java.util.UUID;

/** Somebody or something that a record is about, so that a hold on it keeps the record. */
public record Concern(About about, UUID id) {

    /** What it can be. */
    public enum About {
        PERSON,
        RUN,
        INCIDENT
    }

    /** A person. */
    public static Concern person(UUID id) {
        return new Concern(About.PERSON, id);
    }
}
