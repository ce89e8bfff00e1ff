package org.standclear.testing.web;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import com.sun.net.httpserver.HttpExchange;
import com.sun.net.httpserver.HttpServer;
import java.io.IOException;
import java.net.InetAddress;
import java.net.InetSocketAddress;
import java.nio.charset.StandardCharsets;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;

/** The person at the browser without scripts, seen at a small server that asks for a name and remembers it by cookie. */
class WebUserTests {

    private HttpServer server;

    @BeforeEach
    void start() throws IOException {
        server = HttpServer.create(new InetSocketAddress(InetAddress.getByName("localhost"), 0), 0);
        server.createContext("/sign-in", WebUserTests::signIn);
        server.createContext("/today", exchange -> answer(exchange, 200, "<p>" + cookieOf(exchange) + "</p>"));
        server.start();
    }

    @AfterEach
    void stop() {
        server.stop(0);
    }

    private WebUser somebody() {
        return WebUser.atPort(server.getAddress().getPort());
    }

    private static void signIn(HttpExchange exchange) throws IOException {
        String sent = new String(exchange.getRequestBody().readAllBytes(), StandardCharsets.UTF_8);
        if (exchange.getRequestMethod().equals("GET")) {
            answer(
                    exchange,
                    200,
                    "<form action='/sign-in'><input type=hidden name=_csrf value=7><input name=username></form>");
        } else {
            boolean right = sent.equals("_csrf=7&username=noor&password=beak+and+claw");
            exchange.getResponseHeaders().add("Set-Cookie", "SESSION=" + (right ? "noor" : "") + "; Path=/; HttpOnly");
            exchange.getResponseHeaders().add("Location", right ? "/today" : "/sign-in?refused");
            answer(exchange, 302, "");
        }
    }

    private static String cookieOf(HttpExchange exchange) {
        return Optional.ofNullable(exchange.getRequestHeaders().get("Cookie"))
                .map(List::toString)
                .orElse("nobody");
    }

    private static void answer(HttpExchange exchange, int status, String html) throws IOException {
        byte[] body = html.getBytes(StandardCharsets.UTF_8);
        exchange.sendResponseHeaders(status, body.length == 0 ? -1 : body.length);
        exchange.getResponseBody().write(body);
        exchange.close();
    }

    @Test
    void keepsTheCookieOfTheSignIn() {
        assertThat(somebody().signIn("noor", "beak and claw").get("/today").text())
                .contains("SESSION=noor");
        assertThat(somebody().get("/today").text()).isEqualTo("nobody");
    }

    @Test
    void followsRedirectsOnlyWhenAsked() {
        WebUser noor = somebody();
        WebPage answer = noor.submit(new WebPage.WebForm("/sign-in", Map.of("username", "mateo")));

        assertThat(answer.status()).isEqualTo(302);
        assertThat(answer.location()).isEqualTo("/sign-in?refused");
        assertThat(noor.follow(answer).path()).isEqualTo("/sign-in?refused");
    }

    @Test
    void saysWhenTheSignInIsRefused() {
        assertThatThrownBy(() -> somebody().signIn("noor", "wrong"))
                .hasMessageContaining("sign-in of noor was refused");
    }
}
