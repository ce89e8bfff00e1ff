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
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import org.springframework.boot.test.web.server.LocalServerPort;
import org.standclear.testing.OnH2;

/** Photos as no browser sends them, over a socket: larger than they may be, in what they say or in what they send. */
@OnH2
class PhotoWireIT {

    private static final String PATH = "/incidents/00000000-0000-7000-8000-000000000009/photos";
    private static final Duration LONGEST = Duration.ofSeconds(90);

    /** The container waits 60 s for what does not come; a busy machine takes some seconds for a page. */
    private static final Duration AT_ONCE = Duration.ofSeconds(15);

    private static final String FORM = "multipart/form-data; boundary=b";
    private static final String FOUR_GIGABYTES = "Content-Length: 4294967296";

    private static final String PART = "--b\r\nContent-Disposition: form-data; name=\"photo\"; filename=\"p.jpg\"\r\n"
            + "Content-Type: image/jpeg\r\n\r\n";

    @LocalServerPort
    int port;

    /** Writes a body after the heads, as far as the server listens, and reads the answer. */
    private interface Body {
        void write(OutputStream out) throws IOException;
    }

    private static String heads(String path, String type, String length) {
        return "POST " + path + " HTTP/1.1\r\nHost: localhost\r\nAccept: text/html\r\nContent-Type: " + type + "\r\n"
                + length + "\r\n";
    }

    private String answer(String heads, Body body) throws IOException {
        try (Socket socket = new Socket("localhost", port)) {
            socket.setSoTimeout((int) LONGEST.toMillis());
            OutputStream out = socket.getOutputStream();
            out.write((heads + "\r\n").getBytes(StandardCharsets.US_ASCII));
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

    /** Nothing of it is read, and nothing is waited for: the length is enough. The connection ends with the answer. */
    @ParameterizedTest
    @ValueSource(strings = {FORM, "application/x-www-form-urlencoded", "application/octet-stream"})
    void refusesFourGigabytesByTheHeadsAlone(String type) throws IOException {
        long began = System.nanoTime();

        assertTooLarge(answer(heads(PATH, type, FOUR_GIGABYTES), out -> {}));

        assertThat(since(began)).isLessThan(AT_ONCE);
    }

    @Test
    void refusesFourGigabytesOfWhichSomeComes() throws IOException {
        long began = System.nanoTime();

        assertTooLarge(
                answer(heads(PATH, FORM, FOUR_GIGABYTES), out -> out.write(PART.getBytes(StandardCharsets.US_ASCII))));

        assertThat(since(began)).isLessThan(AT_ONCE);
    }

    @Test
    void tellsProgramsTheSame() throws IOException {
        long began = System.nanoTime();

        String answer = answer(heads("/api/checks", FORM, FOUR_GIGABYTES), out -> {});

        assertThat(answer.lines().findFirst().orElse("")).contains(" 413");
        assertThat(answer).contains("application/problem+json", "8 MiB at most");
        assertThat(since(began)).isLessThan(AT_ONCE);
    }

    /** Read on past the limit, so that a browser that is still sending sees the page; but the page does not wait for that. */
    @Test
    void answersBeforeTheRestOfALittleTooMuchHasCome() throws IOException {
        long began = System.nanoTime();
        try (Socket socket = new Socket("localhost", port)) {
            socket.setSoTimeout((int) LONGEST.toMillis());
            socket.getOutputStream()
                    .write((heads(PATH, FORM, "Content-Length: 20000000") + "\r\n" + PART)
                            .getBytes(StandardCharsets.US_ASCII));
            StringBuilder come = new StringBuilder();
            byte[] piece = new byte[4096];
            while (come.indexOf("</html>") < 0) {
                int bytes = socket.getInputStream().read(piece);
                assertThat(bytes).as("more of the page, after " + come).isPositive();
                come.append(new String(piece, 0, bytes, StandardCharsets.UTF_8));
            }
            assertTooLarge(come.toString());
        }
        assertThat(since(began)).isLessThan(AT_ONCE);
    }

    private static Duration since(long began) {
        return Duration.ofNanos(System.nanoTime() - began);
    }

    /** Without a length it is read up to the limit and no further. */
    @Test
    void refusesWhatGoesOnAndOn() throws IOException {
        byte[] piece = new byte[1 << 20];
        String answer = answer(heads(PATH, FORM, "Transfer-Encoding: chunked\r\nConnection: close"), out -> {
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
