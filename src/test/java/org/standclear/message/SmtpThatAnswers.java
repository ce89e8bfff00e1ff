package org.standclear.message;

import java.io.BufferedReader;
import java.io.IOException;
import java.io.InputStreamReader;
import java.io.PrintWriter;
import java.net.InetAddress;
import java.net.ServerSocket;
import java.net.Socket;
import java.nio.charset.StandardCharsets;
import java.util.List;
import java.util.Map;
import java.util.concurrent.ConcurrentHashMap;
import java.util.concurrent.CopyOnWriteArrayList;

/** A mail server that answers to RCPT as it was told (RFC 5321 4.2), one connection at a time; it takes what it accepts. */
final class SmtpThatAnswers implements AutoCloseable {

    private final ServerSocket socket;
    private final Map<String, String> answers = new ConcurrentHashMap<>();
    private final List<String> taken = new CopyOnWriteArrayList<>();

    SmtpThatAnswers() throws IOException {
        socket = new ServerSocket(0, 50, InetAddress.getLoopbackAddress());
        Thread serving = new Thread(this::serve, "smtp-that-answers");
        serving.setDaemon(true);
        serving.start();
    }

    int port() {
        return socket.getLocalPort();
    }

    /** From now on it says this when the address is named, such as {@code 450 try later}. */
    void says(String address, String answer) {
        answers.put(address, answer);
    }

    /** It takes letters to the address from now on. */
    void takes(String address) {
        answers.remove(address);
    }

    /** Recipients and subjects of what it took, in order. */
    List<String> taken() {
        return taken;
    }

    private void serve() {
        while (!socket.isClosed()) {
            try (Socket caller = socket.accept()) {
                talk(caller);
            } catch (IOException e) {
                // the caller left, or the test is over
                continue;
            }
        }
    }

    private void talk(Socket caller) throws IOException {
        BufferedReader in = new BufferedReader(new InputStreamReader(caller.getInputStream(), StandardCharsets.UTF_8));
        PrintWriter out = new PrintWriter(caller.getOutputStream(), true, StandardCharsets.UTF_8);
        say(out, "220 here");
        String recipient = "";
        for (String line = in.readLine(); line != null; line = in.readLine()) {
            String command = line.toUpperCase(java.util.Locale.ROOT);
            if (command.startsWith("RCPT")) {
                recipient = line.substring(line.indexOf('<') + 1, line.indexOf('>'));
                say(out, answers.getOrDefault(recipient, "250 fine"));
            } else if (command.startsWith("DATA")) {
                say(out, "354 go on");
                taken.add(recipient + " " + subject(in));
                say(out, "250 taken");
            } else if (command.startsWith("QUIT")) {
                say(out, "221 bye");
                return;
            } else {
                say(out, "250 fine");
            }
        }
    }

    private static String subject(BufferedReader in) throws IOException {
        String subject = "";
        for (String line = in.readLine(); line != null && !line.equals("."); line = in.readLine()) {
            if (line.startsWith("Subject: ")) {
                subject = line.substring("Subject: ".length());
            }
        }
        return subject;
    }

    private static void say(PrintWriter out, String answer) {
        out.print(answer + "\r\n");
        out.flush();
    }

    @Override
    public void close() throws IOException {
        socket.close();
    }
}
