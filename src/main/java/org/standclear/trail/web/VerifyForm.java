package org.standclear.trail.web;

import java.util.LinkedHashMap;
import java.util.Locale;
import java.util.Map;
import org.jspecify.annotations.Nullable;
import org.standclear.trail.KeptHash;

/** A number and hash that somebody kept from an earlier verify; both may be empty. */
record VerifyForm(String entry, String hash) {

    static final VerifyForm EMPTY = new VerifyForm("", "");

    /** The fields as they came. */
    static VerifyForm of(@Nullable String entry, @Nullable String hash) {
        return new VerifyForm(
                entry == null ? "" : entry.strip(),
                hash == null ? "" : hash.strip().toLowerCase(Locale.ROOT));
    }

    Map<String, String> errors() {
        Map<String, String> errors = new LinkedHashMap<>();
        if (isGiven() && !entry.matches("[1-9][0-9]{0,17}")) {
            errors.put("entry", "Write the number of the entry as it was printed, for example 812.");
        }
        if (isGiven() && !hash.matches("[0-9a-f]{64}")) {
            errors.put(
                    "hash",
                    "Write all 64 characters of the hash, digits and letters from a to f; this has " + hash.length()
                            + ".");
        }
        return errors;
    }

    private boolean isGiven() {
        return !entry.isEmpty() || !hash.isEmpty();
    }

    /** What to compare with; null when nothing was given. */
    @Nullable
    KeptHash kept() {
        return isGiven() ? new KeptHash(Long.parseLong(entry), hash) : null;
    }
}
