package org.standclear.platform.database;

import java.util.concurrent.CompletableFuture;
import java.util.concurrent.CompletionException;
import org.jspecify.annotations.Nullable;

/**
 * The migrations, run beside the start of everything else. Whoever asks for a connection meanwhile waits until the database
 * has its shape, and gets what went wrong if it could not be brought into it.
 */
final class ShapedDatabase {

    private volatile @Nullable CompletableFuture<Void> shaped;
    private volatile @Nullable Thread shaper;

    /** Begins, and returns at once. */
    void begin(Runnable migrations) {
        CompletableFuture<Void> result = new CompletableFuture<>();
        Thread thread = new Thread(() -> run(migrations, result), "migrations");
        thread.setDaemon(true);
        shaper = thread;
        shaped = result;
        thread.start();
    }

    private static void run(Runnable migrations, CompletableFuture<Void> result) {
        try {
            migrations.run();
            result.complete(null);
        } catch (Throwable broken) {
            result.completeExceptionally(broken);
        }
    }

    /** Returns when the migrations are done, at once to the thread that runs them. */
    void await() {
        CompletableFuture<Void> result = shaped;
        if (result == null || Thread.currentThread() == shaper) {
            return;
        }
        try {
            result.join();
        } catch (CompletionException broken) {
            throw new IllegalStateException("the migrations of the database broke", broken.getCause());
        }
    }
}
