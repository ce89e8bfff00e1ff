package org.standclear.platform.database;

import java.sql.Connection;
import java.sql.SQLException;
import javax.sql.DataSource;
import org.flywaydb.core.Flyway;
import org.springframework.beans.factory.config.BeanPostProcessor;
import org.springframework.boot.flyway.autoconfigure.FlywayMigrationStrategy;
import org.springframework.context.SmartLifecycle;
import org.springframework.jdbc.datasource.DelegatingDataSource;
import org.springframework.stereotype.Component;

/**
 * Runs the migrations beside the making of the beans. No bean gets a connection before they are done, and neither rounds nor
 * pages begin: this is the first of all that starts, and the start fails where they failed.
 */
@Component
final class MigrationsAhead implements BeanPostProcessor, FlywayMigrationStrategy, SmartLifecycle {

    private final ShapedDatabase database = new ShapedDatabase();
    private volatile boolean running;

    @Override
    public Object postProcessAfterInitialization(Object bean, String beanName) {
        return bean instanceof DataSource source ? new Gate(source, database) : bean;
    }

    @Override
    public void migrate(Flyway flyway) {
        database.begin(flyway::migrate);
    }

    @Override
    public void start() {
        database.await();
        running = true;
    }

    @Override
    public void stop() {
        running = false;
    }

    @Override
    public boolean isRunning() {
        return running;
    }

    @Override
    public int getPhase() {
        return Integer.MIN_VALUE;
    }

    /** The pool, for whoever waits his turn. */
    private static final class Gate extends DelegatingDataSource {

        private final ShapedDatabase database;

        Gate(DataSource pool, ShapedDatabase database) {
            super(pool);
            this.database = database;
        }

        @Override
        public Connection getConnection() throws SQLException {
            database.await();
            return super.getConnection();
        }

        @Override
        public Connection getConnection(String user, String password) throws SQLException {
            database.await();
            return super.getConnection(user, password);
        }
    }
}
