package org.standclear.core.text;

import java.util.Collections;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;

/** A part of a YAML document with the line it begins on. */
public sealed interface YamlNode {

    /** Counted from 1. */
    int line();

    /**
     * A single value as it was written.
     *
     * @param plain whether it stands without quotes, so that it may mean a number, a truth value or nothing
     */
    record Scalar(String text, boolean plain, int line) implements YamlNode {

        /** Whether it is the null of the core schema. */
        public boolean isNull() {
            return plain
                    && (text.isEmpty()
                            || text.equals("~")
                            || text.equals("null")
                            || text.equals("Null")
                            || text.equals("NULL"));
        }
    }

    /** A list. */
    record Sequence(List<YamlNode> items, int line) implements YamlNode {

        public Sequence {
            items = List.copyOf(items);
        }
    }

    /** Named values in their order. */
    record Mapping(Map<String, Entry> entries, int line) implements YamlNode {

        public Mapping {
            entries = Collections.unmodifiableMap(new LinkedHashMap<>(entries));
        }
    }

    /** A name and its value. */
    record Entry(Scalar key, YamlNode value) {}
}
