package org.standclear.core.allocation;

import java.time.Duration;
import java.util.Collections;
import java.util.EnumMap;
import java.util.Map;

/** Looks for the best plan. What stands behind it is a solver of general purpose; every plan it gives keeps the rules. */
public interface Allocator {

    /** Looks until the best is proven, the effort is used up, or the watcher says stop. */
    Solution solve(Problem problem, Effort effort, Watcher watcher);

    /**
     * How hard to look.
     *
     * @param seed the same seed and the same work give the same plan
     * @param work how much to do, in a measure of the solver's own that does not depend on the machine; about seconds
     * @param atMost by the clock; when that ends the search, another machine may find another plan
     */
    record Effort(long seed, double work, Duration atMost) {

        public Effort {
            if (!(work > 0) || atMost.isNegative() || atMost.isZero()) {
                throw new IllegalArgumentException("looking takes work and time");
            }
        }
    }

    /** Is told of better plans while the search goes on, and may end it. */
    interface Watcher {

        /** A better plan, or a better bound. Called from the search: it should be quick. */
        void progress(Progress progress);

        /** Whether to stop with what there is. */
        boolean stopped();

        /** Watches nothing and never stops. */
        static Watcher none() {
            return new Watcher() {
                @Override
                public void progress(Progress progress) {
                    // nobody asked
                }

                @Override
                public boolean stopped() {
                    return false;
                }
            };
        }
    }

    /**
     * How far the search is.
     *
     * @param settled the levels that are through, proven or not, with what they came to
     * @param values the levels that are being made better now, with the best so far
     * @param bounds for all of these, where one is known: no plan that keeps the earlier levels has less
     */
    record Progress(Map<Level, Long> settled, Map<Level, Long> values, Map<Level, Long> bounds) {

        public Progress {
            settled = copy(settled);
            values = copy(values);
            bounds = copy(bounds);
        }

        private static Map<Level, Long> copy(Map<Level, Long> values) {
            Map<Level, Long> copy = new EnumMap<>(Level.class);
            copy.putAll(values);
            return Collections.unmodifiableMap(copy);
        }
    }
}
