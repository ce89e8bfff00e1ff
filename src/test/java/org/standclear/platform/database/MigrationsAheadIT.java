package org.standclear.platform.database;

import static org.assertj.core.api.Assertions.assertThat;

import com.zaxxer.hikari.HikariDataSource;
import javax.sql.DataSource;
import org.junit.jupiter.api.Test;
import org.springframework.boot.autoconfigure.AutoConfigurations;
import org.springframework.boot.flyway.autoconfigure.FlywayAutoConfiguration;
import org.springframework.boot.jdbc.autoconfigure.DataSourceAutoConfiguration;
import org.springframework.boot.jdbc.autoconfigure.JdbcClientAutoConfiguration;
import org.springframework.boot.jdbc.autoconfigure.JdbcTemplateAutoConfiguration;
import org.springframework.boot.test.context.runner.ApplicationContextRunner;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.standclear.testing.TestDatabase;

/** A start with the migrations beside it, on H2. */
class MigrationsAheadIT {

    private final ApplicationContextRunner start = new ApplicationContextRunner()
            .withConfiguration(AutoConfigurations.of(
                    DataSourceAutoConfiguration.class,
                    FlywayAutoConfiguration.class,
                    JdbcTemplateAutoConfiguration.class,
                    JdbcClientAutoConfiguration.class))
            .withBean(KeptConnections.class)
            .withBean(MigrationsAhead.class)
            .withPropertyValues(TestDatabase.freshH2().asProperties());

    /** Reads a table that the migrations make while it is made itself. */
    static class EarlyReader {

        private final int labs;

        EarlyReader(JdbcClient jdbc) {
            labs = jdbc.sql("select count(*) from labs").query(Integer.class).single();
        }
    }

    @Test
    void aBeanThatReadsWhileItIsMadeFindsTheTables() {
        start.withPropertyValues(
                        "spring.flyway.locations=classpath:db/migration/common,classpath:db/migration/{vendor}",
                        "spring.flyway.out-of-order=true")
                .withUserConfiguration(EarlyReader.class)
                .run(context ->
                        assertThat(context.getBean(EarlyReader.class).labs).isEqualTo(1));
    }

    @Test
    void aMigrationThatBreaksBreaksTheStart() {
        start.withPropertyValues("spring.flyway.locations=classpath:broken-migrations")
                .run(context -> assertThat(context).getFailure().rootCause().hasMessageContaining("TWICE"));
    }

    @Test
    void thePoolIsStillFoundBehindTheGate() {
        start.withPropertyValues("spring.flyway.locations=classpath:broken-migrations", "spring.flyway.enabled=false")
                .run(context -> assertThat(context.getBean(DataSource.class)
                                .unwrap(HikariDataSource.class)
                                .getMaxLifetime())
                        .isZero());
    }
}
