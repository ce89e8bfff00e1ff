package org.standclear.testing;

import io.zonky.test.db.postgres.embedded.EmbeddedPostgres;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.sql.Connection;
import java.sql.SQLException;
import java.sql.Statement;
import java.util.concurrent.atomic.AtomicInteger;

/** A real PostgreSQL server, one for the whole test JVM, started by the first test that asks it for a database. */
public final class RealPostgres {

    private static final AtomicInteger DATABASES = new AtomicInteger();

    private RealPostgres() {}

    /** Makes a new empty database and says how to reach it. */
    public static TestDatabase freshDatabase() {
        String name = "standclear_" + DATABASES.incrementAndGet();
        try (Connection connection = Server.RUNNING.getPostgresDatabase().getConnection();
                Statement statement = connection.createStatement()) {
            statement.execute("create database " + name);
        } catch (SQLException e) {
            throw new IllegalStateException("no database " + name, e);
        }
        return new TestDatabase(Server.RUNNING.getJdbcUrl("postgres", name), "postgres", "");
    }

    /** Holds the server so that it starts only when the first database is asked for. */
    private static final class Server {

        private static final EmbeddedPostgres RUNNING = start();

        private static EmbeddedPostgres start() {
            try {
                // the data is thrown away, so nothing is gained by waiting for the disk
                return EmbeddedPostgres.builder()
                        .setServerConfig("max_connections", "300")
                        .setServerConfig("fsync", "off")
                        .setServerConfig("synchronous_commit", "off")
                        .setServerConfig("full_page_writes", "off")
                        .start();
            } catch (IOException e) {
                throw new UncheckedIOException("PostgreSQL did not start", e);
            }
        }
    }
}
