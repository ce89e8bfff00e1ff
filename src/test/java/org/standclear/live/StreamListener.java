package org.standclear.live;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.BufferedReader;
import java.io.IOException;
import java.io.InputStream;
import java.io.InputStreamReader;
import java.io.UncheckedIOException;
import java.net.URI;
import java.net.http.HttpClient;
import java.net.http.HttpRequest;
import java.net.http.HttpResponse;
import java.nio.charset.StandardCharsets;
import java.time.Duration;
import java.util.concurrent.BlockingQueue;
import java.util.concurrent.LinkedBlockingQueue;
import java.util.concurrent.TimeUnit;
import org.jspecify.annotations.Nullable;
import org.standclear.platform.ids.CellId;
import org.standclear.testing.web.WebUser;

/** Listens to the stream of what changed, as a browser does. */
final class StreamListener implements AutoCloseable {

    private final BlockingQueue<String> lines = new LinkedBlockingQueue<>();
    private final HttpResponse<InputStream> response;

    StreamListener(int port, WebUser user) throws IOException, InterruptedException {
        HttpRequest request = HttpRequest.newBuilder(URI.create("http://localhost:" + port + "/live"))
                .header("Cookie", user.cookieHeader())
                .build();
        response = HttpClient.newHttpClient().send(request, HttpResponse.BodyHandlers.ofInputStream());
        assertThat(response.statusCode()).isEqualTo(200);
        assertThat(response.headers().firstValue("Content-Type").orElseThrow()).startsWith("text/event-stream");
        Thread reader = new Thread(this::read, "listener");
        reader.setDaemon(true);
        reader.start();
        // the first sign of life: from here on nothing is missed
        assertThat(next(Duration.ofSeconds(5))).startsWith(":");
    }

    private void read() {
        try (BufferedReader text = new BufferedReader(new InputStreamReader(response.body(), StandardCharsets.UTF_8))) {
            text.lines().forEach(lines::add);
            lines.add("closed");
        } catch (IOException | UncheckedIOException closed) {
            lines.add("closed");
        }
    }

    @Nullable
    String next(Duration within) throws InterruptedException {
        return lines.poll(within.toMillis(), TimeUnit.MILLISECONDS);
    }

    /** Whether a line that begins so comes within the time. */
    boolean reads(String begin, Duration within) throws InterruptedException {
        long until = System.nanoTime() + within.toNanos();
        String line = next(within);
        while (line != null) {
            if (line.startsWith(begin)) {
                return true;
            }
            line = next(Duration.ofNanos(Math.max(0, until - System.nanoTime())));
        }
        return false;
    }

    boolean hears(CellId cell, Duration within) throws InterruptedException {
        return reads("data:" + cell, within);
    }

    /** Forgets what came so far. */
    void forget() {
        lines.clear();
    }

    @Override
    public void close() throws IOException {
        response.body().close();
    }
}
