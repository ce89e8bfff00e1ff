package org.standclear.booking.allocation.solver;

import com.google.ortools.sat.LinearExpr;
import com.google.ortools.sat.LinearExprBuilder;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import java.util.function.ToLongFunction;
import org.standclear.core.allocation.Level;

/**
 * Levels that are solved together: one sum in which a step of an earlier level weighs more than all there can be of the
 * later ones. Their order is kept exactly, and one proof serves all of them.
 *
 * @param parts the levels in order, each with its sum, its weight and the most it can be
 */
record SatStage(List<Part> parts) {

    /** A level in the stage. */
    record Part(Level level, LinearExprBuilder sum, long weight, long most) {}

    SatStage {
        parts = List.copyOf(parts);
    }

    /** What the solver makes small. */
    LinearExprBuilder weighted() {
        return weighted(1);
    }

    /** The same so many times, where something else comes after it. */
    LinearExprBuilder weighted(long times) {
        LinearExprBuilder all = LinearExpr.newBuilder();
        parts.forEach(part -> all.addTerm(part.sum(), part.weight() * times));
        return all;
    }

    /** The value of each level. */
    Map<Level, Long> values(ToLongFunction<LinearExprBuilder> valueOf) {
        Map<Level, Long> values = new EnumMap<>(Level.class);
        parts.forEach(part -> values.put(part.level(), valueOf.applyAsLong(part.sum())));
        return values;
    }

    /**
     * What a bound of the weighted sum says about each level: of the first, that it cannot be less than what is left of
     * the bound when all later ones are as large as can be; of a later one only where the earlier ones are proven.
     */
    Map<Level, Long> bounds(long weightedBound, Map<Level, Long> values) {
        Map<Level, Long> bounds = new EnumMap<>(Level.class);
        long left = weightedBound;
        boolean proven = true;
        for (int index = 0; index < parts.size(); index++) {
            Part part = parts.get(index);
            long later = parts.subList(index + 1, parts.size()).stream()
                    .mapToLong(other -> other.weight() * other.most())
                    .sum();
            long value = values.getOrDefault(part.level(), 0L);
            long least = proven ? Math.max(0, -Math.floorDiv(later - left, part.weight())) : 0;
            bounds.put(part.level(), Math.min(least, value));
            proven = proven && least >= value;
            left -= part.weight() * value;
        }
        return bounds;
    }
}
