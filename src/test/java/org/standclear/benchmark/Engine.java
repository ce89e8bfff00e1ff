package org.standclear.benchmark;

import io.zonky.test.db.postgres.embedded.EmbeddedPostgres;
import java.io.IOException;
import org.standclear.testing.TestDatabase;

/** A database engine with a new database in it, with the settings that a lab would run it with. */
record Engine(String name, TestDatabase database, AutoCloseable server) implements AutoCloseable {

    /** In memory as the demo is, with as many statements kept as the shipped address asks for. */
    static Engine h2() {
        TestDatabase fresh = TestDatabase.freshH2();
        String url = fresh.url() + ";QUERY_CACHE_SIZE=512";
        return new Engine("H2", new TestDatabase(url, fresh.user(), fresh.password()), () -> {});
    }

    /** Waits for the disk at every commit, unlike the server of the tests. */
    static Engine postgresql() throws IOException {
        EmbeddedPostgres server = EmbeddedPostgres.builder()
                .setServerConfig("fsync", "on")
                .setServerConfig("synchronous_commit", "on")
                .setServerConfig("max_connections", "200")
                .start();
        String url = server.getJdbcUrl("postgres", "postgres");
        return new Engine("PostgreSQL", new TestDatabase(url, "postgres", ""), server);
    }

    @Override
    public void close() throws Exception {
        server.close();
    }
}
