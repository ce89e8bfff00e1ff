package org.standclear.platform.security;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.net.Socket;
import java.nio.charset.StandardCharsets;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import org.springframework.boot.test.web.server.LocalServerPort;
import org.standclear.testing.OnH2;

/** Requests as no browser sends them: a host that is not this one, a file with a very long name. */
@OnH2
class HostHeaderIT {

    @LocalServerPort
    int port;

    private List<String> answer(String request) throws IOException {
        try (Socket socket = new Socket("localhost", port)) {
            socket.getOutputStream().write(request.getBytes(StandardCharsets.UTF_8));
            socket.getOutputStream().flush();
            return new String(socket.getInputStream().readAllBytes(), StandardCharsets.UTF_8)
                    .lines()
                    .toList();
        }
    }

    @ParameterizedTest
    @ValueSource(strings = {"/", "/me/pin"})
    void theHostOfARequestIsNotRepeated(String path) throws IOException {
        List<String> lines =
                answer("GET " + path + " HTTP/1.1\r\nHost: elsewhere.example\r\nConnection: close\r\n\r\n");

        assertThat(lines.get(0)).contains(" 302");
        assertThat(lines).noneMatch(line -> line.contains("elsewhere.example"));
        assertThat(lines).anyMatch(line -> line.startsWith("Location: /sign-in"));
    }

    @Test
    void aLongFileNameIsNoLargeFile() throws IOException {
        String body = "--b\r\nContent-Disposition: form-data; name=\"upload\"; filename=\"" + "é".repeat(5000)
                + "\"\r\nContent-Type: text/plain\r\n\r\nx\r\n--b--\r\n";
        int length = body.getBytes(StandardCharsets.UTF_8).length;
        List<String> lines = answer("POST /programs/upload HTTP/1.1\r\nHost: localhost\r\nConnection: close\r\n"
                + "Content-Type: multipart/form-data; boundary=b\r\nContent-Length: " + length + "\r\n\r\n" + body);

        // read, and refused only because nobody has signed in
        assertThat(lines.get(0)).contains(" 302");
    }
}
