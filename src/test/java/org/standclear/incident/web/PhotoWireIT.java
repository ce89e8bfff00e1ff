package org.standclear.incident.web;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.io.OutputStream;
import java.net.Socket;
import java.net.SocketException;
import java.nio.charset.StandardCharsets;
import java.time.Duration;
import org.jsoup.Jsoup;
import org.junit.jupiter.api.Test;
import org.springframework.boot.test.web.server.LocalServerPort;
import org.standclear.testing.OnH2;

/** Photos as no browser sends them, over a socket: larger than they may be, in what they say or in what they send. */
@OnH2
class PhotoWireIT {

    private static final String PATH = "/incidents/00000000-0000-7000-8000-000000000009/photos";
    private static final Duration SOON = Duration.ofSeconds(90);

    private static final String PART = "--b\r\nContent-Disposition: form-data; name=\"photo\"; filename=\"p.jpg\"\r\n"
            + "Content-Type: image/jpeg\r\n\r\n";

    @LocalServerPort
    int port;

    /** Writes a body after the heads, as far as the server listens, and reads the answer. */
    private interface Body {
        void write(OutputStream out) throws IOException;
    }

    private String answer(String length, Body body) throws IOException {
        try (Socket socket = new Socket("localhost", port)) {
            socket.setSoTimeout((int) SOON.toMillis());
            OutputStream out = socket.getOutputStream();
            out.write(("POST " + PATH + " HTTP/1.1\r\nHost: localhost\r\nConnection: close\r\nAccept: text/html\r\n"
                            + "Content-Type: multipart/form-data; boundary=b\r\n" + length + "\r\n\r\n")
                    .getBytes(StandardCharsets.US_ASCII));
            try {
                body.write(out);
                out.flush();
            } catch (SocketException refusedBeforeTheEnd) {
                // the answer is there already
            }
            return new String(socket.getInputStream().readAllBytes(), StandardCharsets.UTF_8);
        }
    }

    private static void assertTooLarge(String answer) {
        assertThat(answer.lines().findFirst().orElse("")).contains(" 413");
        assertThat(Jsoup.parse(answer).text()).contains("8 MiB at most");
    }

    /** Nothing of it is read: the length is enough. */
    @Test
    void refusesFourGigabytesByWhatTheySay() throws IOException {
        long began = System.nanoTime();

        assertTooLarge(
                answer("Content-Length: 4294967296", out -> out.write(PART.getBytes(StandardCharsets.US_ASCII))));

        assertThat(Duration.ofNanos(System.nanoTime() - began)).isLessThan(SOON);
    }

    /** Without a length it is read up to the limit and no further. */
    @Test
    void refusesWhatGoesOnAndOn() throws IOException {
        byte[] piece = new byte[1 << 20];
        String answer = answer("Transfer-Encoding: chunked", out -> {
            chunk(out, PART.getBytes(StandardCharsets.US_ASCII));
            for (int i = 0; i < 12; i++) {
                chunk(out, piece);
            }
            out.write("0\r\n\r\n".getBytes(StandardCharsets.US_ASCII));
        });

        assertThat(answer).as("refused, whether or not the answer got through").doesNotContain(" 200");
        if (!answer.isEmpty()) {
            assertTooLarge(answer);
        }
    }

    private static void chunk(OutputStream out, byte[] bytes) throws IOException {
        out.write((Integer.toHexString(bytes.length) + "\r\n").getBytes(StandardCharsets.US_ASCII));
        out.write(bytes);
        out.write("\r\n".getBytes(StandardCharsets.US_ASCII));
    }
}
