package org.standclear.check;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.Optional;
import java.util.concurrent.CompletableFuture;
import java.util.concurrent.CountDownLatch;
import org.junit.jupiter.api.Test;

class CheckTurnsTests {

    private static final int LARGE = CheckTurns.LARGE_BYTES;

    private final CountDownLatch begun = new CountDownLatch(1);
    private final CountDownLatch mayEnd = new CountDownLatch(1);

    @Test
    void refusesALargeFileWhenTheTurnIsTakenButNotASmallOne() throws Exception {
        CheckTurns turns = new CheckTurns(1, 0, 0);
        var first = CompletableFuture.supplyAsync(() -> turns.take(LARGE, this::waitInside));
        begun.await();

        assertThat(turns.take(LARGE, () -> "second")).isEmpty();
        assertThat(turns.take(LARGE - 1, () -> "small")).contains("small");

        mayEnd.countDown();
        assertThat(first.get()).contains("first");
        assertThat(turns.take(LARGE, () -> "third")).contains("third");
    }

    @Test
    void givesTheTurnBackWhenTheWorkFails() {
        CheckTurns turns = new CheckTurns(1, 0, 0);

        assertThat(catchFailure(turns)).isTrue();
        assertThat(turns.take(LARGE, () -> "next")).isEqualTo(Optional.of("next"));
    }

    private static boolean catchFailure(CheckTurns turns) {
        try {
            turns.take(LARGE, () -> {
                throw new IllegalStateException("broken");
            });
            return false;
        } catch (IllegalStateException expected) {
            return true;
        }
    }

    private String waitInside() {
        begun.countDown();
        try {
            mayEnd.await();
        } catch (InterruptedException stopped) {
            Thread.currentThread().interrupt();
        }
        return "first";
    }
}
