package org.standclear.incident;

import java.util.Locale;

/** Where an incident is. */
public enum IncidentState {
    OPEN("reported, not reviewed yet"),
    IN_REVIEW("in review"),
    CLOSED("closed");

    private final String words;

    IncidentState(String words) {
        this.words = words;
    }

    /** The state as people say it. */
    public String words() {
        return words;
    }

    /** The state as addresses have it. */
    public String code() {
        return name().toLowerCase(Locale.ROOT).replace('_', '-');
    }
}
