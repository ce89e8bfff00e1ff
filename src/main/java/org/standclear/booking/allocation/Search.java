package org.standclear.booking.allocation;

import java.time.Instant;
import java.util.Arrays;
import java.util.Map;
import java.util.Optional;
import java.util.UUID;
import org.jspecify.annotations.Nullable;
import org.standclear.core.allocation.Level;
import org.standclear.platform.ids.PersonId;

/**
 * A search for a window's plan.
 *
 * @param standing how far it is, by level
 * @param says what ended it, when something did that people should know
 * @param aliveAt when whoever searches last gave a sign of life
 */
public record Search(
        UUID id,
        UUID window,
        State state,
        long seed,
        Map<Level, Value> standing,
        String says,
        PersonId begunBy,
        Instant begunAt,
        Instant aliveAt,
        @Nullable Instant endedAt) {

    /** What became of it. */
    public enum State {
        RUNNING("searching"),
        FOUND("plan found"),
        STOPPED("stopped with the best plan so far"),
        FAILED("failed"),
        LOST("lost");

        private final String words;

        State(String words) {
            this.words = words;
        }

        /** The state as people say it. */
        public String words() {
            return words;
        }

        /** Whether there is a plan to look at. */
        public boolean hasPlan() {
            return this == FOUND || this == STOPPED;
        }
    }

    /** A level's value, and what it cannot be less than. */
    public record Value(long value, long least) {

        /** How far the value may lie above the least possible. */
        public long gap() {
            return value - least;
        }
    }

    /** Whether the plan is proven best on every level. */
    public boolean isProvenBest() {
        return firstUnproven().isEmpty();
    }

    /** The first level on which a better plan may exist; what is least on those after it holds only as far as it stays. */
    public Optional<Level> firstUnproven() {
        return Arrays.stream(Level.values())
                .filter(level -> {
                    Value value = standing.get(level);
                    return value == null || value.gap() > 0;
                })
                .findFirst();
    }
}
