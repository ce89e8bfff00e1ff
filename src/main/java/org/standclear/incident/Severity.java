package org.standclear.incident;

import java.util.Locale;
import java.util.Optional;
import org.jspecify.annotations.Nullable;

/** How bad it was, or could reasonably have been; the two are asked for apart. */
public enum Severity {
    NONE("no harm, no damage"),
    DAMAGE("damage to things"),
    FIRST_AID("first aid"),
    TREATMENT("treatment by a doctor"),
    LASTING("lasting injury"),
    DEATH("death");

    private final String words;

    Severity(String words) {
        this.words = words;
    }

    /** The severity as people say it. */
    public String words() {
        return words;
    }

    /** The severity as forms send it. */
    public String code() {
        return name().toLowerCase(Locale.ROOT).replace('_', '-');
    }

    /** Reads what a form sent. */
    public static Optional<Severity> of(@Nullable String code) {
        for (Severity one : values()) {
            if (one.code().equals(code)) {
                return Optional.of(one);
            }
        }
        return Optional.empty();
    }
}
