package org.standclear.simulation;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.BufferedReader;
import java.io.IOException;
import java.io.InputStreamReader;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.sql.Connection;
import java.sql.DriverManager;
import java.sql.SQLException;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.UUID;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.springframework.beans.factory.config.YamlPropertiesFactoryBean;
import org.springframework.core.io.ClassPathResource;
import org.standclear.testing.RealPostgres;
import org.standclear.testing.TestDatabase;

/**
 * A process is killed (SIGKILL) while bookings stand at every step of a release: between two acts, in the middle of each
 * act's transaction, and just before its commit. Nothing that it had told people is lost, nothing is there that it had not,
 * and the next process brings every booking to its end.
 */
class KilledProcessIT {

    private static final int LANES = Lane.Step.values().length * 3 + 1;

    /** What a process had told its people about a booking. */
    private record Told(String state, int signatures, int releases) {}

    private final Map<String, Told> told = new LinkedHashMap<>();
    private final List<String> ended = new ArrayList<>();

    @Test
    void losesAndInventsNothingOnPostgres() throws Exception {
        TestDatabase database = RealPostgres.freshDatabase();
        for (Lane.Step atCommit : List.of(Lane.Step.RELEASE, Lane.Step.START)) {
            killed(database, atCommit);
        }
        endsAll(database);
    }

    @Test
    void losesAndInventsNothingOnAnH2File(@TempDir Path folder) throws Exception {
        TestDatabase database = new TestDatabase(
                shippedUrl().replace("./data/standclear", folder.resolve("lab").toString()), "sa", "");
        killed(database, Lane.Step.RELEASE);
        endsAll(database);
    }

    /** As the application is shipped: what it promises depends on how H2 is told to write. */
    private static String shippedUrl() {
        YamlPropertiesFactoryBean settings = new YamlPropertiesFactoryBean();
        settings.setResources(new ClassPathResource("application.yml"));
        String url = java.util.Objects.requireNonNull(settings.getObject()).getProperty("spring.datasource.url");
        assertThat(url).startsWith("jdbc:h2:file:./data/standclear;");
        return url;
    }

    private void killed(TestDatabase database, Lane.Step atCommit) throws Exception {
        List<String> leftBehind = List.copyOf(told.keySet());
        told.clear();
        Process process = started(database, atCommit.name(), leftBehind);
        assertThat(linesUntil(process, "PARKED"))
                .as("the process came to its places")
                .isTrue();
        process.destroyForcibly();
        // 128 + 9: it was killed, it did not end by itself
        assertThat(process.waitFor()).isEqualTo(137);
        assertThat(ended).containsAll(leftBehind);
        assertThat(told).hasSize(LANES);
        try (Connection connection = connected(database)) {
            assertThat(Auditor.whole(connection, Term.END)).isEmpty();
            for (Map.Entry<String, Told> booking : told.entrySet()) {
                assertThat(found(connection, booking.getKey()))
                        .as(booking.getKey())
                        .isEqualTo(booking.getValue());
            }
        }
    }

    private static Told found(Connection connection, String booking) throws SQLException {
        UUID id = UUID.fromString(booking);
        return new Told(
                Rows.text(
                        Rows.of(connection, "select state from bookings where id = ?", id)
                                .get(0),
                        "state"),
                count(connection, """
                        select count(*) as n from signoff_signatures g join signoff_sheets s on s.id = g.sheet_id
                        where s.booking_id = ?""", id),
                count(connection, "select count(*) as n from signoff_releases where booking_id = ?", id));
    }

    private static int count(Connection connection, String sql, UUID id) throws SQLException {
        return Math.toIntExact(Rows.number(Rows.of(connection, sql, id).get(0), "n"));
    }

    private void endsAll(TestDatabase database) throws Exception {
        List<String> leftBehind = List.copyOf(told.keySet());
        Process process = started(database, "none", leftBehind);
        assertThat(linesUntil(process, "TAKEN-UP")).isTrue();
        process.destroyForcibly();
        process.waitFor();
        assertThat(ended).containsAll(leftBehind);
        try (Connection connection = connected(database)) {
            assertThat(Auditor.whole(connection, Term.END)).isEmpty();
            for (String booking : leftBehind) {
                assertThat(found(connection, booking).state()).isEqualTo("CLOSED_OUT");
            }
        }
    }

    private static Process started(TestDatabase database, String atCommit, List<String> leftBehind) throws IOException {
        List<String> command = new ArrayList<>(List.of(
                Path.of(System.getProperty("java.home"), "bin", "java").toString(),
                "-Xmx400m",
                "-XX:TieredStopAtLevel=1",
                "-XX:+UseSerialGC",
                "-Ddatabase.url=" + database.url(),
                "-Ddatabase.user=" + database.user(),
                "-cp",
                System.getProperty("surefire.test.class.path", System.getProperty("java.class.path")),
                ParkedProcess.class.getName(),
                atCommit));
        command.addAll(leftBehind);
        return new ProcessBuilder(command).redirectErrorStream(true).start();
    }

    /** Reads what the process says until it says the word; false when it ends before. */
    private boolean linesUntil(Process process, String word) throws IOException {
        BufferedReader said =
                new BufferedReader(new InputStreamReader(process.getInputStream(), StandardCharsets.UTF_8));
        for (String line = said.readLine(); line != null; line = said.readLine()) {
            if (!line.startsWith(ParkedProcess.MARK)) {
                System.out.println("  from the process: " + line);
                continue;
            }
            String[] words = line.substring(ParkedProcess.MARK.length()).split(" ");
            switch (words[0]) {
                case "ACK" ->
                    told.put(words[1], new Told(words[2], Integer.parseInt(words[3]), Integer.parseInt(words[4])));
                case "ENDED" -> ended.add(words[1]);
                default -> {}
            }
            if (words[0].equals(word)) {
                return true;
            }
        }
        return false;
    }

    /** Waits until the database has noticed that the process is gone. */
    private static Connection connected(TestDatabase database) throws SQLException, InterruptedException {
        Connection connection = DriverManager.getConnection(database.url(), database.user(), database.password());
        if (database.url().startsWith("jdbc:postgresql")) {
            String others = "select count(*) as n from pg_stat_activity where datname = current_database()"
                    + " and pid <> pg_backend_pid() and backend_type = 'client backend'";
            for (int i = 0; i < 100 && Rows.number(Rows.of(connection, others).get(0), "n") > 0; i++) {
                Thread.sleep(100);
            }
        }
        return connection;
    }
}
