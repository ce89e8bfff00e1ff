package org.standclear.testing;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import com.zaxxer.hikari.HikariDataSource;
import java.sql.SQLException;
import java.time.Clock;
import java.time.Duration;
import javax.sql.DataSource;
import org.junit.jupiter.api.Nested;
import org.junit.jupiter.api.RepeatedTest;
import org.junit.jupiter.api.Test;
import org.springframework.beans.factory.annotation.Autowired;
import org.springframework.dao.DataIntegrityViolationException;
import org.springframework.jdbc.core.simple.JdbcClient;

/** The same application starts on both engines, each with a database and a clock of its own. */
class EnginesIT {

    abstract static class Cases {

        @Autowired
        DataSource dataSource;

        @Autowired
        JdbcClient jdbc;

        @Autowired
        MovableClock movableClock;

        @Autowired
        Clock clock;

        String product() throws SQLException {
            try (var connection = dataSource.getConnection()) {
                return connection.getMetaData().getDatabaseProductName() + " "
                        + connection.getMetaData().getDatabaseMajorVersion();
            }
        }

        @RepeatedTest(2)
        void startsEachTestAtTheSameInstant() {
            assertThat(clock.instant()).isEqualTo(MovableClock.START);
            movableClock.moveBy(Duration.ofHours(1));
            assertThat(clock.instant()).isEqualTo(MovableClock.START.plusSeconds(3600));
        }
    }

    @Nested
    @OnH2
    class OnH2Engine extends Cases {

        @Test
        void runsOnH2() throws SQLException {
            assertThat(product()).isEqualTo("H2 2");
        }

        @Test
        void neverRetiresTheConnectionThatMadeTheTables() throws SQLException {
            assertThat(dataSource.unwrap(HikariDataSource.class).getMaxLifetime())
                    .isZero();
        }
    }

    @Nested
    @OnPostgres
    class OnPostgresEngine extends Cases {

        @Test
        void runsOnPostgres() throws SQLException {
            assertThat(product()).isEqualTo("PostgreSQL 17");
        }

        @Test
        void refusesOverlappingRangesByAnExclusionConstraint() {
            jdbc.sql("create extension if not exists btree_gist").update();
            jdbc.sql("create table engine_probe (id integer, span int4range, "
                            + "constraint engine_probe_overlap exclude using gist (id with =, span with &&))")
                    .update();
            jdbc.sql("insert into engine_probe values (1, '[1,5)')").update();

            assertThatThrownBy(() -> jdbc.sql("insert into engine_probe values (1, '[4,6)')")
                            .update())
                    .isInstanceOf(DataIntegrityViolationException.class);
            assertThat(jdbc.sql("insert into engine_probe values (1, '[5,6)')").update())
                    .isEqualTo(1);
        }
    }
}
