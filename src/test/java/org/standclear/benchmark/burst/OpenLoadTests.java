package org.standclear.benchmark.burst;

import static org.assertj.core.api.Assertions.assertThat;

import java.time.Duration;
import java.util.List;
import java.util.Objects;
import java.util.concurrent.CompletableFuture;
import java.util.concurrent.TimeUnit;
import java.util.stream.IntStream;
import org.junit.jupiter.api.Test;
import org.standclear.benchmark.burst.OpenLoad.Arrival;
import org.standclear.benchmark.burst.OpenLoad.Outcome;

class OpenLoadTests {

    private static CompletableFuture<String> after(int millis, String fault) {
        return CompletableFuture.supplyAsync(
                () -> fault, CompletableFuture.delayedExecutor(millis, TimeUnit.MILLISECONDS));
    }

    /** Eleven requests of 300 ms each, 10 ms apart: one after the other would be over 3 s. */
    @Test
    void doesNotWaitForAnswers() throws Exception {
        List<Arrival> arrivals = IntStream.range(0, 11)
                .mapToObj(number -> new Arrival(Duration.ofMillis(10L * number), "slow", () -> after(300, "")))
                .toList();

        Outcome outcome = OpenLoad.run(arrivals);

        assertThat(outcome.all().wall()).isBetween(Duration.ofMillis(400), Duration.ofMillis(2500));
        assertThat(outcome.all().errors()).isZero();
        assertThat(outcome.all().quantileMs(0.01)).isGreaterThanOrEqualTo(300);
    }

    /** The sender is held up for 200 ms by the first; the second, due at once, is charged for it. */
    @Test
    void takesTimesFromThePlannedInstant() throws Exception {
        Outcome outcome = OpenLoad.run(List.of(
                new Arrival(Duration.ZERO, "first", () -> {
                    sleep(200);
                    return CompletableFuture.completedFuture("");
                }),
                new Arrival(Duration.ZERO, "second", () -> CompletableFuture.completedFuture(""))));

        assertThat(Objects.requireNonNull(outcome.kinds().get("second")).quantileMs(1))
                .isGreaterThanOrEqualTo(200);
        assertThat(outcome.latest()).isGreaterThanOrEqualTo(Duration.ofMillis(200));
    }

    @Test
    void countsFaultsByKind() throws Exception {
        Outcome outcome = OpenLoad.run(List.of(
                new Arrival(Duration.ZERO, "page", () -> after(1, "")),
                new Arrival(Duration.ZERO, "page", () -> after(1, "status 500")),
                new Arrival(
                        Duration.ZERO, "claim", () -> CompletableFuture.failedFuture(new IllegalStateException()))));

        assertThat(outcome.all().errors()).isEqualTo(2);
        assertThat(outcome.unanswered()).isEqualTo(1);
        assertThat(Objects.requireNonNull(outcome.kinds().get("page")).errors()).isEqualTo(1);
        assertThat(outcome.faults())
                .containsEntry("page: status 500", 1)
                .containsEntry("claim: IllegalStateException", 1);
    }

    private static void sleep(int millis) {
        try {
            Thread.sleep(millis);
        } catch (InterruptedException e) {
            Thread.currentThread().interrupt();
        }
    }
}
