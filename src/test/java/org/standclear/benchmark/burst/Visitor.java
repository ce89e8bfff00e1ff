package org.standclear.benchmark.burst;

import java.net.URI;
import java.net.http.HttpClient;
import java.net.http.HttpRequest;
import java.net.http.HttpRequest.BodyPublishers;
import java.net.http.HttpResponse;
import java.net.http.HttpResponse.BodyHandlers;
import java.time.Duration;
import java.util.List;
import java.util.UUID;
import java.util.concurrent.CompletableFuture;
import java.util.concurrent.atomic.AtomicInteger;
import org.standclear.testing.web.WebPage.WebForm;

/** Somebody signed in whose requests go to one instance after the other, and who does not wait for answers. */
final class Visitor {

    /** A browser gives up much later, but a person does not wait longer. */
    static final Duration PATIENCE = Duration.ofSeconds(30);

    private static final HttpClient CLIENT = HttpClient.newBuilder()
            .version(HttpClient.Version.HTTP_1_1)
            .followRedirects(HttpClient.Redirect.NEVER)
            .connectTimeout(PATIENCE)
            .build();

    private final List<URI> instances;
    private final String cookies;
    private final AtomicInteger turn = new AtomicInteger();

    Visitor(List<URI> instances, String cookies) {
        this.instances = List.copyOf(instances);
        this.cookies = cookies;
    }

    /** Opens a page. */
    CompletableFuture<HttpResponse<String>> get(String path) {
        return send(request(path).GET());
    }

    /** Sends the form under a token of its own, as if it had been opened anew. */
    CompletableFuture<HttpResponse<String>> post(WebForm form) {
        WebForm fresh = form.with("formToken", UUID.randomUUID().toString());
        return send(request(form.action())
                .header("Content-Type", "application/x-www-form-urlencoded")
                .POST(BodyPublishers.ofString(fresh.encoded())));
    }

    private HttpRequest.Builder request(String path) {
        URI instance = instances.get(turn.getAndIncrement() % instances.size());
        HttpRequest.Builder request =
                HttpRequest.newBuilder(instance.resolve(path)).timeout(PATIENCE);
        return cookies.isEmpty() ? request : request.header("Cookie", cookies);
    }

    private static CompletableFuture<HttpResponse<String>> send(HttpRequest.Builder request) {
        return CLIENT.sendAsync(request.build(), BodyHandlers.ofString());
    }
}
