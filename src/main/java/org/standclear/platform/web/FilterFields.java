package org.standclear.platform.web;

import java.time.DateTimeException;
import java.util.LinkedHashMap;
import java.util.Map;
import java.util.function.BiFunction;
import org.jspecify.annotations.Nullable;
import org.springframework.web.util.UriComponentsBuilder;

/** The fields of a list's filter: as somebody sent them, and in the address at which the list goes on. */
public final class FilterFields {

    /** What is wrong with a place that cannot be read. */
    public static final String NO_PLACE = "The list cannot go on from there. Begin at its top.";

    private static final int LONGEST = 200;

    private FilterFields() {}

    /** One field, empty when it was not sent: without blanks around it, and cut where nobody writes on. */
    public static String tidy(@Nullable String raw) {
        String text = raw == null ? "" : raw.replace("\0", "").strip();
        return text.length() > LONGEST ? text.substring(0, LONGEST) : text;
    }

    /** The path with the fields that are filled behind it. */
    public static String address(String path, Map<String, String> fields) {
        Map<String, String> filled = new LinkedHashMap<>(fields);
        filled.values().removeIf(String::isEmpty);
        UriComponentsBuilder address = UriComponentsBuilder.fromPath(path);
        filled.keySet().forEach(name -> address.queryParam(name, "{" + name + "}"));
        return address.encode().buildAndExpand(filled).toUriString();
    }

    /**
     * A place in a list that is in the order of something and, where that is alike, of ids; both with a low line between.
     * Null when there is none or it cannot be read.
     */
    public static <T> @Nullable T place(String after, BiFunction<String, String, T> reading) {
        int split = after.indexOf('_');
        try {
            return split < 0 ? null : reading.apply(after.substring(0, split), after.substring(split + 1));
        } catch (DateTimeException | IllegalArgumentException notAPlace) {
            return null;
        }
    }
}
