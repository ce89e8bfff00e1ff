package org.standclear.core.allocation;

import java.util.Arrays;
import java.util.Collections;
import java.util.EnumMap;
import java.util.Map;
import java.util.Optional;

/**
 * What came of the search.
 *
 * @param bounds for each level: no plan as good on the earlier levels has less
 * @param stopped whether somebody ended it before it was through
 */
public record Solution(Plan plan, Score score, Map<Level, Long> bounds, boolean stopped) {

    public Solution {
        Map<Level, Long> copy = new EnumMap<>(Level.class);
        copy.putAll(bounds);
        bounds = Collections.unmodifiableMap(copy);
    }

    /** The first level on which a better plan may exist; empty when none does. */
    public Optional<Level> firstUnproven() {
        return Arrays.stream(Level.values())
                .filter(level -> bounds.getOrDefault(level, 0L) < score.at(level))
                .findFirst();
    }

    /** Whether the plan is proven best on every level. */
    public boolean isProvenBest() {
        return firstUnproven().isEmpty();
    }

    /** How far a level's value may lie above the least possible. */
    public long gap(Level level) {
        return score.at(level) - bounds.getOrDefault(level, 0L);
    }
}
