package org.standclear.signoff;

import java.util.Locale;

/** Whose part of a list: three parts, three people. */
public enum Part {
    OPERATOR("operator"),
    ATTENDANT("e-stop attendant"),
    RELEASER("releaser");

    private final String words;

    Part(String words) {
        this.words = words;
    }

    /** The part as people say it. */
    public String words() {
        return words;
    }

    /** The part as it is stored and sent in forms. */
    public String code() {
        return name().toLowerCase(Locale.ROOT);
    }

    /** Reads the stored form; throws IllegalArgumentException for anything else. */
    public static Part of(String code) {
        return valueOf(code.toUpperCase(Locale.ROOT));
    }
}
