package org.standclear.benchmark;

import java.io.File;
import java.io.IOException;
import java.net.ConnectException;
import java.net.ServerSocket;
import java.net.URI;
import java.net.http.HttpClient;
import java.net.http.HttpRequest;
import java.net.http.HttpResponse.BodyHandlers;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Duration;
import java.util.ArrayList;
import java.util.List;
import java.util.concurrent.TimeUnit;
import org.jspecify.annotations.Nullable;
import org.standclear.testing.TestDatabase;

/**
 * The packaged jar as a process of its own with the shipped heap. With {@code -Dbenchmark.classpath} it is started from
 * there instead of from the jar, to try a measuring program without packaging first.
 */
public final class PackagedApplication implements AutoCloseable {

    private static final Path JAR = Path.of("target", "standclear.jar");
    private static final @Nullable String CLASSPATH = System.getProperty("benchmark.classpath");
    private static final Duration PATIENCE = Duration.ofMinutes(15);

    /** A connection taken before the pages are there may never be answered. */
    private static final Duration PATIENCE_FOR_ONE = Duration.ofSeconds(2);

    private final Process process;
    private final URI address;
    private final Duration untilFirstPage;

    private PackagedApplication(Process process, URI address, Duration untilFirstPage) {
        this.process = process;
        this.address = address;
        this.untilFirstPage = untilFirstPage;
    }

    /** Starts it in demo mode and waits until the sign-in page is there. */
    public static PackagedApplication start(TestDatabase database) throws IOException, InterruptedException {
        List<String> launch = new ArrayList<>(
                CLASSPATH == null
                        ? List.of("-jar", JAR.toString())
                        : List.of("-cp", CLASSPATH, "org.standclear.StandclearApplication"));
        launch.add("--spring.profiles.active=demo");
        return start(database, launch);
    }

    /**
     * Starts it and waits until the sign-in page is there.
     *
     * @param launch what follows {@code java} and its heap, the jar among it
     */
    static PackagedApplication start(TestDatabase database, List<String> launch)
            throws IOException, InterruptedException {
        int port = freePort();
        List<String> command = new ArrayList<>(List.of(
                Path.of(System.getProperty("java.home"), "bin", "java").toString(),
                System.getProperty("benchmark.heap", "-Xmx512m")));
        command.addAll(launch);
        command.add("--server.port=" + port);
        for (String property : database.asProperties()) {
            command.add("--" + property);
        }
        File log = new File("target", "benchmark-application-" + port + ".log");
        long begin = System.nanoTime();
        Process process = new ProcessBuilder(command)
                .redirectErrorStream(true)
                .redirectOutput(log)
                .start();
        URI address = URI.create("http://localhost:" + port);
        awaitFirstPage(process, address, log, begin);
        return new PackagedApplication(process, address, Duration.ofNanos(System.nanoTime() - begin));
    }

    private static void awaitFirstPage(Process process, URI address, File log, long begin) throws InterruptedException {
        HttpClient client = HttpClient.newHttpClient();
        HttpRequest request = HttpRequest.newBuilder(address.resolve("/sign-in"))
                .timeout(PATIENCE_FOR_ONE)
                .build();
        while (System.nanoTime() - begin < PATIENCE.toNanos()) {
            if (!process.isAlive()) {
                throw new IllegalStateException("the application ended; see " + log);
            }
            try {
                if (client.send(request, BodyHandlers.ofString()).statusCode() == 200) {
                    return;
                }
            } catch (ConnectException notYet) {
                Thread.sleep(10);
            } catch (IOException e) {
                Thread.sleep(10);
            }
        }
        process.destroyForcibly();
        throw new IllegalStateException("no sign-in page within " + PATIENCE);
    }

    private static int freePort() throws IOException {
        try (ServerSocket socket = new ServerSocket(0)) {
            return socket.getLocalPort();
        }
    }

    /** Where its pages are. */
    public URI address() {
        return address;
    }

    /** From the start of the process to the last byte of the first page. */
    Duration untilFirstPage() {
        return untilFirstPage;
    }

    /** What it has used of all processors together until now. */
    Duration processorTime() {
        return process.info().totalCpuDuration().orElseThrow();
    }

    /** Main memory in use now, in MiB, as the kernel counts it. */
    public long residentMiB() throws IOException {
        return statusMiB("VmRSS:");
    }

    /** The most main memory it ever had, in MiB. */
    public long mostResidentMiB() throws IOException {
        return statusMiB("VmHWM:");
    }

    private long statusMiB(String name) throws IOException {
        return Files.readAllLines(Path.of("/proc", String.valueOf(process.pid()), "status")).stream()
                .filter(line -> line.startsWith(name))
                .mapToLong(line -> Long.parseLong(line.replaceAll("\\D", "")) / 1024)
                .findFirst()
                .orElseThrow();
    }

    @Override
    public void close() throws InterruptedException {
        process.destroy();
        if (!process.waitFor(60, TimeUnit.SECONDS)) {
            process.destroyForcibly();
        }
    }
}
