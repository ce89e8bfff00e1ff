package org.standclear.platform.database;

import org.springframework.jdbc.core.ConnectionCallback;
import org.springframework.jdbc.core.JdbcTemplate;
import org.springframework.stereotype.Component;
import org.springframework.util.function.SingletonSupplier;

/** Which of the two engines the database runs on; asked once. */
@Component
class Engine {

    private static final String POSTGRES = "PostgreSQL";

    private final SingletonSupplier<Boolean> postgres;

    Engine(JdbcTemplate jdbc) {
        this.postgres = SingletonSupplier.of(() -> POSTGRES.equals(jdbc.execute((ConnectionCallback<String>)
                connection -> connection.getMetaData().getDatabaseProductName())));
    }

    boolean isPostgres() {
        return postgres.obtain();
    }
}
