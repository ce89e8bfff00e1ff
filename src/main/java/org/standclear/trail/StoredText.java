package org.standclear.trail;

import java.util.Map;
import java.util.SortedMap;
import java.util.TreeMap;
import tools.jackson.core.JacksonException;
import tools.jackson.core.type.TypeReference;
import tools.jackson.databind.json.JsonMapper;

/** Brings texts into the form in which both databases give them back unchanged, so that hashes can be recomputed. */
final class StoredText {

    private static final int LONGEST_FACT = 4000;
    private static final JsonMapper JSON = JsonMapper.shared();
    private static final TypeReference<TreeMap<String, String>> FACTS = new TypeReference<>() {};

    private StoredText() {}

    /** Replaces what a database cannot keep (NUL, half characters) and shortens what is longer than the column. */
    static String clean(String raw, int longest) {
        StringBuilder kept = new StringBuilder(raw.length());
        raw.codePoints()
                .map(c -> c == 0 || (c >= Character.MIN_SURROGATE && c <= Character.MAX_SURROGATE) ? 0xFFFD : c)
                .forEach(kept::appendCodePoint);
        if (kept.codePointCount(0, kept.length()) <= longest) {
            return kept.toString();
        }
        return kept.substring(0, kept.offsetByCodePoints(0, longest - 1)) + "…";
    }

    /** The facts as one line of JSON, names in order. */
    static String facts(SortedMap<String, String> facts) {
        SortedMap<String, String> cleaned = new TreeMap<>();
        facts.forEach((name, value) -> cleaned.put(clean(name, 200), clean(value, LONGEST_FACT)));
        return JSON.writeValueAsString(cleaned);
    }

    static SortedMap<String, String> facts(String stored) {
        try {
            return JSON.readValue(stored, FACTS);
        } catch (JacksonException tamperedWith) {
            // verify says so; a page that shows the entry must still show it
            return new TreeMap<>(Map.of("not readable", stored));
        }
    }
}
