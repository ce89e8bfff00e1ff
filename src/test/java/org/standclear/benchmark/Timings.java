package org.standclear.benchmark;

import java.time.Duration;
import java.util.Arrays;
import java.util.Locale;

/**
 * What a load took.
 *
 * @param sortedNanos how long each request took, shortest first
 * @param errors answers other than the expected one
 * @param wall from the first request to the last answer
 */
public record Timings(long[] sortedNanos, int errors, Duration wall) {

    public Timings {
        sortedNanos = sortedNanos.clone();
        Arrays.sort(sortedNanos);
    }

    /** The time that the given share of requests did not exceed, in milliseconds (nearest rank). */
    public double quantileMs(double share) {
        int rank = (int) Math.ceil(share * sortedNanos.length);
        return sortedNanos[Math.max(rank, 1) - 1] / 1e6;
    }

    /** Requests in the whole time. */
    public double perSecond() {
        return sortedNanos.length / (wall.toNanos() / 1e9);
    }

    /** A line of a table in Markdown, under {@link #head}. */
    public String row(String name) {
        return String.format(
                Locale.ROOT,
                "| %s | %d | %.1f | %.1f | %.1f | %.0f | %d |",
                name,
                sortedNanos.length,
                quantileMs(0.5),
                quantileMs(0.95),
                quantileMs(0.99),
                perSecond(),
                errors);
    }

    /** The head of that table. */
    public static String head() {
        return "| what | requests | median ms | p95 ms | p99 ms | per second | errors |\n|---|---|---|---|---|---|---|";
    }
}
