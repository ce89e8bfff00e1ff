package org.standclear.core.forecast;

import java.time.LocalDate;
import java.util.Collections;
import java.util.List;
import java.util.Map;
import java.util.NavigableMap;
import java.util.TreeMap;

/** How many turns the lab can give on each day; a day without any is not open. */
public record LabDays(Map<LocalDate, Integer> turns) {

    public LabDays {
        TreeMap<LocalDate, Integer> sorted = new TreeMap<>(turns);
        if (sorted.values().stream().anyMatch(one -> one < 0)) {
            throw new IllegalArgumentException("a day gives 0 or more turns");
        }
        turns = Collections.unmodifiableNavigableMap(sorted);
    }

    /** Turns on that day. */
    public int on(LocalDate day) {
        return turns.getOrDefault(day, 0);
    }

    /** The open days, in order. */
    public List<LocalDate> open() {
        return turns.entrySet().stream()
                .filter(entry -> entry.getValue() > 0)
                .map(Map.Entry::getKey)
                .toList();
    }

    /** The last open days up to that one, included when it is open; fewer when there are not so many. */
    List<LocalDate> openUpTo(LocalDate day, int atMost) {
        NavigableMap<LocalDate, Integer> before = new TreeMap<>(turns).headMap(day, true);
        List<LocalDate> open = before.entrySet().stream()
                .filter(entry -> entry.getValue() > 0)
                .map(Map.Entry::getKey)
                .toList();
        return open.subList(Math.max(0, open.size() - atMost), open.size());
    }
}
