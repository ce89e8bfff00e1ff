package org.standclear.benchmark;

import io.zonky.test.db.postgres.embedded.EmbeddedPostgres;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Comparator;
import java.util.Map;
import java.util.stream.Stream;
import org.standclear.testing.TestDatabase;

/** A database engine with a new database in it, with the settings that a lab would run it with. */
public record Engine(String name, TestDatabase database, AutoCloseable server) implements AutoCloseable {

    /** In memory as the demo is, with as many statements kept as the shipped address asks for. */
    public static Engine h2() {
        TestDatabase fresh = TestDatabase.freshH2();
        String url = fresh.url() + ";QUERY_CACHE_SIZE=512";
        return new Engine("H2", new TestDatabase(url, fresh.user(), fresh.password()), () -> {});
    }

    /** In a file, as the shipped application keeps it; the file goes with the engine. */
    public static Engine h2File() throws IOException {
        Path folder = Files.createTempDirectory("benchmark");
        String url =
                "jdbc:h2:file:" + folder.resolve("lab") + ";DB_CLOSE_ON_EXIT=FALSE;QUERY_CACHE_SIZE=512;WRITE_DELAY=0";
        return new Engine("H2 file", new TestDatabase(url, "sa", ""), () -> remove(folder));
    }

    /** Waits for the disk at every commit, unlike the server of the tests. */
    public static Engine postgresql() throws IOException {
        return postgresql(Map.of());
    }

    /** The same, counting what each statement reads in {@code pg_stat_statements}. */
    public static Engine countingPostgresql() throws IOException {
        return postgresql(Map.of("shared_preload_libraries", "pg_stat_statements", "pg_stat_statements.max", "10000"));
    }

    private static Engine postgresql(Map<String, String> more) throws IOException {
        EmbeddedPostgres.Builder builder = EmbeddedPostgres.builder()
                .setServerConfig("fsync", "on")
                .setServerConfig("synchronous_commit", "on")
                .setServerConfig("max_connections", "200");
        more.forEach(builder::setServerConfig);
        EmbeddedPostgres server = builder.start();
        String url = server.getJdbcUrl("postgres", "postgres");
        return new Engine("PostgreSQL", new TestDatabase(url, "postgres", ""), server);
    }

    private static void remove(Path folder) throws IOException {
        try (Stream<Path> files = Files.walk(folder)) {
            for (Path file : files.sorted(Comparator.reverseOrder()).toList()) {
                Files.delete(file);
            }
        }
    }

    @Override
    public void close() throws Exception {
        server.close();
    }
}
