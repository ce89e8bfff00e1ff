package org.standclear.testing.web;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.net.CookieManager;
import java.net.URI;
import java.net.http.HttpClient;
import java.net.http.HttpClient.Redirect;
import java.net.http.HttpClient.Version;
import java.net.http.HttpRequest;
import java.net.http.HttpRequest.BodyPublishers;
import java.net.http.HttpResponse;
import java.net.http.HttpResponse.BodyHandlers;
import java.time.Duration;
import java.util.Map;

/** A person at a browser without scripts: keeps cookies, fills in forms with their hidden fields, follows redirects. */
public final class WebUser {

    /** One for all people: their cookies are kept here, not there, and fifty clients would be fifty selector threads. */
    private static final HttpClient CLIENT = HttpClient.newBuilder()
            .version(Version.HTTP_1_1)
            .followRedirects(Redirect.NEVER)
            .connectTimeout(Duration.ofSeconds(30))
            .build();

    private final URI application;
    private final CookieManager cookies = new CookieManager();

    /** Somebody who is not signed in. */
    public WebUser(URI application) {
        this.application = application;
    }

    /** Somebody at the application that a test started on that port. */
    public static WebUser atPort(int port) {
        return new WebUser(URI.create("http://localhost:" + port));
    }

    /** Opens a page; a redirect is returned as such. */
    public WebPage get(String path) {
        return send(request(path).GET());
    }

    /** Sends a form; a redirect is returned as such. */
    public WebPage submit(WebPage.WebForm form) {
        return send(request(form.action())
                .header("Content-Type", "application/x-www-form-urlencoded")
                .POST(BodyPublishers.ofString(form.encoded())));
    }

    /** Opens where the answer points to, for as long as it points somewhere. */
    public WebPage follow(WebPage answer) {
        WebPage page = answer;
        for (int i = 0; i < 5 && !page.location().isEmpty(); i++) {
            page = get(page.location());
        }
        return page;
    }

    /** Signs in by the form; fails when the application refuses. */
    public WebUser signIn(String login, String password) {
        WebPage answer =
                submit(get("/sign-in").form("/sign-in").with("username", login).with("password", password));
        if (answer.status() / 100 != 3 || answer.location().startsWith("/sign-in")) {
            throw new AssertionError(
                    "sign-in of " + login + " was refused: " + answer.status() + " " + answer.location());
        }
        return this;
    }

    /** What this person's browser sends with every request, for a test that reads an answer in its own way. */
    public String cookieHeader() {
        return cookies.getCookieStore().get(application).stream()
                .map(cookie -> cookie.getName() + "=" + cookie.getValue())
                .collect(java.util.stream.Collectors.joining("; "));
    }

    private HttpRequest.Builder request(String path) {
        return HttpRequest.newBuilder(application.resolve(path)).timeout(Duration.ofMinutes(1));
    }

    private WebPage send(HttpRequest.Builder builder) {
        try {
            URI uri = builder.build().uri();
            cookies.get(uri, Map.of()).forEach((name, values) -> values.forEach(value -> builder.header(name, value)));
            HttpResponse<String> response = CLIENT.send(builder.build(), BodyHandlers.ofString());
            cookies.put(uri, response.headers().map());
            String location =
                    response.headers().firstValue("Location").map(this::pathOf).orElse("");
            return new WebPage(response.statusCode(), pathOf(uri.toString()), location, response.body());
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        } catch (InterruptedException e) {
            Thread.currentThread().interrupt();
            throw new IllegalStateException(e);
        }
    }

    private String pathOf(String address) {
        URI uri = application.resolve(address);
        return uri.getRawQuery() == null ? uri.getRawPath() : uri.getRawPath() + "?" + uri.getRawQuery();
    }
}
