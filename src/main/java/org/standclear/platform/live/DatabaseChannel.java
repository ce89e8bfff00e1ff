package org.standclear.platform.live;

import java.sql.Connection;
import java.sql.DriverManager;
import java.sql.SQLException;
import java.sql.Statement;
import java.util.Locale;
import java.util.Properties;
import java.util.concurrent.atomic.AtomicReference;
import org.jspecify.annotations.Nullable;
import org.postgresql.PGConnection;
import org.postgresql.PGNotification;
import org.slf4j.Logger;
import org.slf4j.LoggerFactory;
import org.springframework.boot.jdbc.autoconfigure.JdbcConnectionDetails;
import org.springframework.context.SmartLifecycle;
import org.springframework.stereotype.Component;

/**
 * Listens on a connection of its own to what any instance on the same PostgreSQL commits. When the connection breaks it
 * is made anew, and everybody looks again, since something may have been missed meanwhile.
 */
@Component
class DatabaseChannel implements SmartLifecycle {

    static final String NAME = "standclear_live";

    private static final Logger LOG = LoggerFactory.getLogger(DatabaseChannel.class);
    private static final int WAIT_MS = 5_000;
    private static final int AGAIN_MS = 1_000;

    private final JdbcConnectionDetails database;
    private final LiveHub hub;
    private final AtomicReference<@Nullable Connection> open = new AtomicReference<>();
    private volatile @Nullable Thread listener;

    DatabaseChannel(JdbcConnectionDetails database, LiveHub hub) {
        this.database = database;
        this.hub = hub;
    }

    /** Whether the database tells all instances; otherwise there is only this one. */
    boolean reachesAll() {
        return database.getJdbcUrl().toLowerCase(Locale.ROOT).startsWith("jdbc:postgresql:");
    }

    @Override
    public void start() {
        if (reachesAll()) {
            Thread thread = new Thread(this::listen, "live-channel");
            thread.setDaemon(true);
            listener = thread;
            thread.start();
        }
    }

    @Override
    public void stop() {
        Thread thread = listener;
        listener = null;
        if (thread != null) {
            thread.interrupt();
            close();
        }
    }

    @Override
    public boolean isRunning() {
        return listener != null;
    }

    private void listen() {
        boolean again = false;
        while (listener == Thread.currentThread()) {
            try (Connection connection = connect()) {
                open.set(connection);
                if (again) {
                    hub.publish(LiveHub.EVERYTHING);
                }
                again = true;
                receive(connection);
            } catch (SQLException broken) {
                if (listener == Thread.currentThread()) {
                    LOG.warn(
                            "Live events: the connection to the database broke, trying again ({})",
                            broken.getMessage());
                    pause();
                }
            } finally {
                open.set(null);
            }
        }
    }

    private Connection connect() throws SQLException {
        Properties properties = new Properties();
        properties.setProperty("user", String.valueOf(database.getUsername()));
        properties.setProperty("password", String.valueOf(database.getPassword()));
        properties.setProperty("ApplicationName", "standclear live");
        // a peer that is gone without a word is noticed
        properties.setProperty("tcpKeepAlive", "true");
        Connection connection = DriverManager.getConnection(database.getJdbcUrl(), properties);
        try (Statement statement = connection.createStatement()) {
            statement.execute("listen " + NAME);
        }
        return connection;
    }

    private void receive(Connection connection) throws SQLException {
        PGConnection channel = connection.unwrap(PGConnection.class);
        while (listener == Thread.currentThread()) {
            PGNotification[] heard = channel.getNotifications(WAIT_MS);
            if (heard == null || heard.length == 0) {
                if (!connection.isValid(2)) {
                    throw new SQLException("no answer");
                }
                continue;
            }
            for (PGNotification one : heard) {
                hub.publish(one.getParameter());
            }
        }
    }

    private void close() {
        Connection connection = open.get();
        if (connection != null) {
            try {
                connection.close();
            } catch (SQLException alreadyGone) {
                LOG.debug("Live events: the connection was gone", alreadyGone);
            }
        }
    }

    private static void pause() {
        try {
            Thread.sleep(AGAIN_MS);
        } catch (InterruptedException stopped) {
            Thread.currentThread().interrupt();
        }
    }
}
