package org.standclear.people.tries;

import com.zaxxer.hikari.HikariConfig;
import com.zaxxer.hikari.HikariDataSource;
import java.sql.SQLException;
import java.util.function.Function;
import javax.sql.DataSource;
import org.springframework.beans.factory.DisposableBean;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.jdbc.support.JdbcTransactionManager;
import org.springframework.stereotype.Component;
import org.springframework.transaction.support.TransactionTemplate;

/**
 * A few connections of its own. A try is counted while the act that asks for it holds a connection already; if both came
 * from one pool, a handful of simultaneous acts would wait for each other until they time out.
 */
@Component
class OwnConnections implements DisposableBean {

    private static final int CONNECTIONS = 3;

    private final HikariDataSource pool;
    private final JdbcClient jdbc;
    private final TransactionTemplate transaction;

    OwnConnections(DataSource application) throws SQLException {
        HikariConfig config = new HikariConfig();
        application.unwrap(HikariDataSource.class).copyStateTo(config);
        config.setPoolName("tries");
        config.setMaximumPoolSize(CONNECTIONS);
        config.setMinimumIdle(0);
        this.pool = new HikariDataSource(config);
        this.jdbc = JdbcClient.create(pool);
        this.transaction = new TransactionTemplate(new JdbcTransactionManager(pool));
    }

    /** Runs the work in a transaction that commits whatever becomes of the one that is running. */
    <T> T inOwnTransaction(Function<JdbcClient, T> work) {
        return java.util.Objects.requireNonNull(transaction.execute(status -> work.apply(jdbc)));
    }

    @Override
    public void destroy() {
        pool.close();
    }
}
