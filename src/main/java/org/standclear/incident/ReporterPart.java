package org.standclear.incident;

import java.util.Locale;
import java.util.Optional;
import org.jspecify.annotations.Nullable;

/** What the reporter had to do with it. */
public enum ReporterPart {
    /** The short form does not ask. Counts as a part in it, to be on the careful side. */
    UNKNOWN("not said", true),
    IN_IT("I had a part in it", true),
    SAW_IT("I saw it", false),
    WAS_TOLD("I was told", false);

    private final String words;
    private final boolean involved;

    ReporterPart(String words, boolean involved) {
        this.words = words;
        this.involved = involved;
    }

    /** The part as the reporter says it. */
    public String words() {
        return words;
    }

    /** Whether the reporter may not review it. */
    public boolean isInvolved() {
        return involved;
    }

    /** The part as forms send it. */
    public String code() {
        return name().toLowerCase(Locale.ROOT).replace('_', '-');
    }

    /** Reads what a form sent. */
    public static Optional<ReporterPart> of(@Nullable String code) {
        for (ReporterPart one : values()) {
            if (one.code().equals(code)) {
                return Optional.of(one);
            }
        }
        return Optional.empty();
    }
}
