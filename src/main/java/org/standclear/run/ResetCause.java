package org.standclear.run;

import java.util.Locale;
import java.util.Optional;

/** Why the arm was stopped; known before a stop is reset. */
public enum ResetCause {
    PRECAUTION("precaution: nothing was wrong", true),
    PERSON("a person or a hand came over the line", false),
    MOTION("the arm moved otherwise than expected", false),
    PART("part, tool or fixture", false),
    CONTACT_LIMIT("the arm stopped itself", false);

    private final String words;
    private final boolean shortList;

    ResetCause(String words, boolean shortList) {
        this.words = words;
        this.shortList = shortList;
    }

    /** The cause as people say it. */
    public String words() {
        return words;
    }

    /** Whether the short list may release again. */
    public boolean shortList() {
        return shortList;
    }

    /** The cause as forms send it. */
    public String code() {
        return name().toLowerCase(Locale.ROOT).replace('_', '-');
    }

    /** Reads what a form sent. */
    public static Optional<ResetCause> of(String code) {
        for (ResetCause cause : values()) {
            if (cause.code().equals(code)) {
                return Optional.of(cause);
            }
        }
        return Optional.empty();
    }
}
