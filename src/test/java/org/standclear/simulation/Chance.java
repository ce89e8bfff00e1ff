package org.standclear.simulation;

import java.util.List;
import java.util.Random;

/** Everything that is left to chance in a term; the same seed gives the same term. */
final class Chance {

    private final Random random;

    Chance(long seed) {
        random = new Random(seed);
    }

    /** True so many times of a hundred. */
    boolean percent(int percent) {
        return random.nextInt(100) < percent;
    }

    /** From the first to the last, both included. */
    int between(int first, int last) {
        return first + random.nextInt(last - first + 1);
    }

    <T> T one(List<T> of) {
        return of.get(random.nextInt(of.size()));
    }
}
