package org.standclear.run.web;

import static org.assertj.core.api.Assertions.assertThat;
import static org.springframework.security.test.web.servlet.request.SecurityMockMvcRequestPostProcessors.csrf;
import static org.springframework.security.test.web.servlet.request.SecurityMockMvcRequestPostProcessors.user;
import static org.springframework.test.web.servlet.request.MockMvcRequestBuilders.post;

import java.sql.Connection;
import java.sql.PreparedStatement;
import java.sql.SQLException;
import java.util.UUID;
import java.util.concurrent.CompletableFuture;
import java.util.concurrent.TimeUnit;
import java.util.function.Supplier;
import javax.sql.DataSource;
import org.junit.jupiter.api.Nested;
import org.junit.jupiter.api.Test;
import org.springframework.beans.factory.annotation.Autowired;
import org.springframework.jdbc.core.JdbcTemplate;
import org.springframework.jdbc.datasource.SingleConnectionDataSource;
import org.springframework.test.web.servlet.MvcResult;
import org.standclear.incident.IncidentClass;
import org.standclear.testing.LockWaits;
import org.standclear.testing.OnH2;
import org.standclear.testing.OnPostgres;

/** A stop, or a report, that loses against others' locks is kept all the same and answered as ever. */
class StopInARushIT {

    abstract static class Cases extends BenchPageCases {

        @Autowired
        DataSource database;

        /**
         * The other has a row that the post waits for: makes its first try fail, if need be by the second row, and lets
         * go. False when the database gave up on the other instead.
         */
        abstract boolean failOnce(Connection other, Runnable waits, String table, UUID id) throws Exception;

        /** How often the database gave up on somebody so far; what cannot be counted is told by the time that it took. */
        abstract long failures();

        void lock(Connection other, String table, UUID id) throws SQLException {
            try (PreparedStatement select =
                    other.prepareStatement("select id from " + table + " where id = ? for update")) {
                select.setObject(1, id);
                select.executeQuery();
            }
        }

        /** The answer to a post about a booking that is released, whose first try fails. */
        private MvcResult losing(Supplier<CompletableFuture<MvcResult>> post, String held, String closing)
                throws Exception {
            for (int tries = 0; tries < 5; tries++) {
                aScene();
                scene().released();
                try (Connection other = database.getConnection()) {
                    other.setAutoCommit(false);
                    lock(other, held, rowOf(held));
                    CompletableFuture<MvcResult> sent = post.get();
                    boolean failed = failOnce(
                            other,
                            () -> assertThat(sent).as("waits for the lock").isNotDone(),
                            closing,
                            rowOf(closing));
                    MvcResult answer = sent.get(60, TimeUnit.SECONDS);
                    if (failed) {
                        return answer;
                    }
                }
            }
            throw new AssertionError("the database gave up on the other each time");
        }

        private UUID rowOf(String table) {
            return table.equals("cells")
                    ? scene().cell.value()
                    : scene().booking.value();
        }

        private CompletableFuture<MvcResult> sends(String path, String... parameters) {
            return CompletableFuture.supplyAsync(() -> {
                try {
                    var request =
                            post(path).param("formToken", UUID.randomUUID().toString());
                    for (int i = 0; i < parameters.length; i += 2) {
                        request.param(parameters[i], parameters[i + 1]);
                    }
                    return mvc.perform(
                                    request.with(user(signedIn(scene().noor))).with(csrf()))
                            .andReturn();
                } catch (Exception failed) {
                    throw new IllegalStateException(failed);
                }
            });
        }

        @Test
        void keepsTheStopAndAnswersAsEver() throws Exception {
            long before = failures();
            MvcResult result =
                    losing(() -> sends("/bench/" + scene().cell + "/stop", "kind", "press"), "cells", "bookings");
            assertThat(result.getResponse().getStatus()).isEqualTo(302);
            assertThat(String.valueOf(result.getFlashMap().get("told"))).startsWith("Logged: ");
            assertThat(failures()).as("the first try did fail").isGreaterThan(before);
            assertThat(count("run_events where kind = 'E_STOP_PRESS' and cell_id"))
                    .isEqualTo(1);
            assertThat(count("cell_stops where cell_id")).isEqualTo(1);
        }

        @Test
        void keepsAReportAndAnswersAsEver() throws Exception {
            long before = failures();
            MvcResult result = losing(this::reports, "cells", "bookings");
            assertThat(result.getResponse().getStatus()).isEqualTo(302);
            assertThat(failures()).as("the first try did fail").isGreaterThan(before);
            assertThat(count("incidents where cell_id")).isEqualTo(1);
        }

        private CompletableFuture<MvcResult> reports() {
            String sentence = "The arm touched a sleeve.";
            String kind = IncidentClass.CONTACT.code();
            return sends("/incidents/near-miss", "cell", scene().cell.toString(), "kind", kind, "sentence", sentence);
        }

        private int count(String fromWhere) {
            return jdbc.sql("select count(*) from " + fromWhere + " = :cell")
                    .param("cell", scene().cell.value())
                    .query(Integer.class)
                    .single();
        }
    }

    /** Waits longer than H2 lets anybody wait for a lock. */
    @Nested
    @OnH2
    class OnH2Engine extends Cases {

        private long lockTimeouts;

        @Override
        boolean failOnce(Connection other, Runnable waits, String table, UUID id) throws Exception {
            long timeout = jdbc.sql("select cast(setting_value as bigint) from information_schema.settings"
                            + " where setting_name = 'DEFAULT_LOCK_TIMEOUT'")
                    .query(Long.class)
                    .optional()
                    .orElse(2000L);
            Thread.sleep(timeout + 700);
            waits.run();
            lockTimeouts++;
            other.rollback();
            return true;
        }

        @Override
        long failures() {
            return lockTimeouts;
        }
    }

    /**
     * Closes a circle of waits in which the post is the one that PostgreSQL gives up on: the other looks for circles
     * later than the post. Each looks once, so a post that has looked before the circle is closed leaves it to the other.
     */
    @Nested
    @OnPostgres
    class OnPostgresEngine extends Cases {

        private static final String DEADLOCK = "40P01";

        @Override
        boolean failOnce(Connection other, Runnable waits, String table, UUID id) throws Exception {
            try (var set = other.createStatement()) {
                set.execute("set local deadlock_timeout = '5s'");
            }
            new LockWaits(new JdbcTemplate(new SingleConnectionDataSource(other, true))).awaitAnybody();
            waits.run();
            try {
                lock(other, table, id);
                return true;
            } catch (SQLException givenUp) {
                if (!DEADLOCK.equals(givenUp.getSQLState())) {
                    throw givenUp;
                }
                return false;
            } finally {
                other.rollback();
            }
        }

        /** Deadlocks are counted with some delay. */
        @Override
        long failures() {
            try {
                Thread.sleep(1200);
            } catch (InterruptedException stopped) {
                Thread.currentThread().interrupt();
            }
            return jdbc.sql("select deadlocks from pg_stat_database where datname = current_database()")
                    .query(Long.class)
                    .single();
        }
    }
}
