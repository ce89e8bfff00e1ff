package org.standclear.simulation;

import java.time.Duration;
import java.time.Instant;
import java.util.ArrayList;
import java.util.List;

/** What happened in a term, act by act, in words that are the same whenever its seed is played. */
final class Journal {

    private static final int SHOWN = 25;

    private final long seed;
    private final List<String> lines = new ArrayList<>();
    private int deaths;
    private Duration took = Duration.ZERO;

    Journal(long seed) {
        this.seed = seed;
    }

    long seed() {
        return seed;
    }

    void write(Instant at, String what, String came, boolean died) {
        lines.add((lines.size() + 1) + " " + at + " " + what + ": " + came + (died ? " (died)" : ""));
        deaths += died ? 1 : 0;
    }

    /** The processor time of the thread that played the term. */
    void took(Duration time) {
        took = time;
    }

    Duration took() {
        return took;
    }

    List<String> lines() {
        return List.copyOf(lines);
    }

    int deaths() {
        return deaths;
    }

    long count(String words) {
        return lines.stream().filter(line -> line.contains(words)).count();
    }

    /** Names seed and step, so that the term can be played to the same place again. */
    AssertionError failure(List<String> faults) {
        String last = String.join("\n", lines.subList(Math.max(0, lines.size() - SHOWN), lines.size()));
        return new AssertionError("seed " + seed + ", step " + lines.size() + ":\n" + String.join("\n", faults)
                + "\nThe steps before it:\n" + last);
    }
}
