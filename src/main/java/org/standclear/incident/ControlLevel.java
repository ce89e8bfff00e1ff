package org.standclear.incident;

import java.util.Locale;
import java.util.Optional;
import org.jspecify.annotations.Nullable;

/** Levels of the hierarchy of controls, the strongest first. */
public enum ControlLevel {
    ELIMINATION("take the hazard away", false),
    SUBSTITUTION("put something less hazardous in its place", false),
    ENGINEERING("engineering: guard, fixture, limit", false),
    ADMINISTRATIVE("administrative: rule, list, training, sign", true),
    PROTECTIVE_EQUIPMENT("protective equipment", true);

    private final String words;
    private final boolean weak;

    ControlLevel(String words, boolean weak) {
        this.words = words;
        this.weak = weak;
    }

    /** The level as people say it. */
    public String words() {
        return words;
    }

    /** Whether it asks people to be careful and leaves the hazard where it is. */
    public boolean leavesTheHazard() {
        return weak;
    }

    /** The level as forms send it. */
    public String code() {
        return name().toLowerCase(Locale.ROOT).replace('_', '-');
    }

    /** Reads what a form sent. */
    public static Optional<ControlLevel> of(@Nullable String code) {
        for (ControlLevel one : values()) {
            if (one.code().equals(code)) {
                return Optional.of(one);
            }
        }
        return Optional.empty();
    }
}
