package org.standclear.platform.database;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatCode;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.util.concurrent.CompletableFuture;
import java.util.concurrent.CountDownLatch;
import java.util.concurrent.TimeUnit;
import java.util.concurrent.TimeoutException;
import org.junit.jupiter.api.Test;

class ShapedDatabaseTests {

    private final ShapedDatabase database = new ShapedDatabase();

    @Test
    void letsEverybodyThroughBeforeItBegan() {
        assertThatCode(database::await).doesNotThrowAnyException();
    }

    @Test
    void makesOthersWaitUntilItIsDone() throws Exception {
        CountDownLatch migrating = new CountDownLatch(1);
        database.begin(() -> await(migrating));
        CompletableFuture<Void> other = CompletableFuture.runAsync(database::await);

        assertThatThrownBy(() -> other.get(200, TimeUnit.MILLISECONDS)).isInstanceOf(TimeoutException.class);
        migrating.countDown();
        other.get(10, TimeUnit.SECONDS);
    }

    @Test
    void doesNotWaitForItself() throws Exception {
        CompletableFuture<String> through = new CompletableFuture<>();
        database.begin(() -> {
            database.await();
            through.complete("through");
        });

        assertThat(through.get(10, TimeUnit.SECONDS)).isEqualTo("through");
    }

    @Test
    void tellsEverybodyWhatBroke() {
        database.begin(() -> {
            throw new IllegalArgumentException("V1 is broken");
        });

        for (int i = 0; i < 2; i++) {
            assertThatThrownBy(database::await)
                    .isInstanceOf(IllegalStateException.class)
                    .hasRootCauseMessage("V1 is broken");
        }
    }

    private static void await(CountDownLatch latch) {
        try {
            assertThat(latch.await(10, TimeUnit.SECONDS)).isTrue();
        } catch (InterruptedException stopped) {
            throw new IllegalStateException(stopped);
        }
    }
}
