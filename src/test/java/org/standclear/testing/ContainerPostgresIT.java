package org.standclear.testing;

import static org.assertj.core.api.Assertions.assertThat;

import org.flywaydb.core.Flyway;
import org.junit.jupiter.api.Test;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.jdbc.datasource.DriverManagerDataSource;
import org.testcontainers.junit.jupiter.Container;
import org.testcontainers.junit.jupiter.Testcontainers;
import org.testcontainers.postgresql.PostgreSQLContainer;

/** The migrations also run on the server image that the compose file uses; reported as skipped where Docker is not. */
@Testcontainers(disabledWithoutDocker = true)
class ContainerPostgresIT {

    @Container
    private static final PostgreSQLContainer SERVER = new PostgreSQLContainer("postgres:17-alpine");

    @Test
    void migratesAnEmptyContainerDatabase() {
        var dataSource = new DriverManagerDataSource(SERVER.getJdbcUrl(), SERVER.getUsername(), SERVER.getPassword());
        Flyway flyway = Flyway.configure()
                .dataSource(dataSource)
                .locations("classpath:db/migration/common", "classpath:db/migration/postgresql")
                .load();

        var result = flyway.migrate();

        Integer recorded = JdbcClient.create(dataSource)
                .sql("select count(*) from flyway_schema_history where success")
                .query(Integer.class)
                .single();
        assertThat(result.success).isTrue();
        assertThat(recorded).isEqualTo(flyway.info().applied().length).isPositive();
    }
}
