package org.standclear.incident;

import java.util.Locale;
import java.util.Optional;
import org.jspecify.annotations.Nullable;

/** Where a cause lies; a review looks into at least three of the four. */
public enum CauseBranch {
    PEOPLE("people and communication"),
    PROGRAM("program and check"),
    CELL("cell, tool and layout"),
    ORGANISATION("organisation");

    private final String words;

    CauseBranch(String words) {
        this.words = words;
    }

    /** The branch as people say it. */
    public String words() {
        return words;
    }

    /** The branch as forms send it. */
    public String code() {
        return name().toLowerCase(Locale.ROOT);
    }

    /** Reads what a form sent. */
    public static Optional<CauseBranch> of(@Nullable String code) {
        for (CauseBranch one : values()) {
            if (one.code().equals(code)) {
                return Optional.of(one);
            }
        }
        return Optional.empty();
    }
}
