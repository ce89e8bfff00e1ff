package org.standclear.signoff;

import java.util.List;
import java.util.Locale;

/** The lists at a cell: once at check-in, once for each release, and when the e-stop changes hands. */
public enum SignoffList {
    SESSION("session list", List.of(Part.OPERATOR, Part.ATTENDANT)),
    BENCH("bench list", List.of(Part.OPERATOR, Part.ATTENDANT, Part.RELEASER)),
    /** Another attendant takes over the e-stop of a release that waits or runs. */
    HANDOVER("handover", List.of(Part.ATTENDANT));

    private final String words;
    private final List<Part> parts;

    SignoffList(String words, List<Part> parts) {
        this.words = words;
        this.parts = parts;
    }

    /** The list as people say it. */
    public String words() {
        return words;
    }

    /** Who signs it, in order. */
    public List<Part> parts() {
        return parts;
    }

    /** The list as it is stored. */
    public String code() {
        return name().toLowerCase(Locale.ROOT);
    }

    /** Reads the stored form; throws IllegalArgumentException for anything else. */
    public static SignoffList of(String code) {
        return valueOf(code.toUpperCase(Locale.ROOT));
    }
}
