package org.standclear.signoff;

import java.util.Collections;
import java.util.Map;
import java.util.SortedMap;
import java.util.TreeMap;

/** What one person answered, by item and field. */
public record Answers(SortedMap<Integer, SortedMap<String, String>> byItem) {

    public Answers {
        SortedMap<Integer, SortedMap<String, String>> copy = new TreeMap<>();
        byItem.forEach((item, values) -> copy.put(item, Collections.unmodifiableSortedMap(new TreeMap<>(values))));
        byItem = Collections.unmodifiableSortedMap(copy);
    }

    /** No answer yet. */
    public static Answers none() {
        return new Answers(new TreeMap<>());
    }

    /** Whether the item is answered. */
    public boolean has(int item) {
        return byItem.containsKey(item);
    }

    /** The values of an item; empty when it is not answered. */
    public Map<String, String> of(int item) {
        SortedMap<String, String> values = byItem.get(item);
        return values == null ? Map.of() : values;
    }

    /** One value; empty text when it is not given. */
    public String value(int item, String name) {
        return of(item).getOrDefault(name, "");
    }

    /** The same answers with one item more, or answered anew. */
    public Answers with(int item, Map<String, String> values) {
        SortedMap<Integer, SortedMap<String, String>> more = new TreeMap<>(byItem);
        more.put(item, new TreeMap<>(values));
        return new Answers(more);
    }
}
