package org.standclear.booking;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatCode;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.sql.Connection;
import java.sql.PreparedStatement;
import java.sql.SQLException;
import java.time.Instant;
import java.time.ZoneOffset;
import java.util.ArrayList;
import java.util.List;
import java.util.UUID;
import java.util.concurrent.CountDownLatch;
import java.util.concurrent.ExecutionException;
import java.util.concurrent.ExecutorService;
import java.util.concurrent.Executors;
import java.util.concurrent.Future;
import java.util.concurrent.TimeUnit;
import java.util.concurrent.TimeoutException;
import javax.sql.DataSource;
import org.jspecify.annotations.Nullable;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Nested;
import org.junit.jupiter.api.Test;
import org.springframework.beans.factory.annotation.Autowired;
import org.springframework.context.ApplicationContext;
import org.springframework.dao.DataIntegrityViolationException;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.standclear.booking.Claims.Claim;
import org.standclear.booking.Claims.Kind;
import org.standclear.testing.OnH2;
import org.standclear.testing.OnPostgres;

/** The last line of defence: the database refuses overlapping claims from those who take none of the program's locks. */
class ClaimsIT {

    private static final Instant NOON = Instant.parse("2030-05-06T12:00:00Z");

    abstract static class Cases {

        @Autowired
        ApplicationContext application;

        @Autowired
        Claims claims;

        @Autowired
        DataSource dataSource;

        @Autowired
        JdbcClient jdbc;

        private UUID booking = new UUID(0, 0);

        @BeforeEach
        void aBookingWithoutClaims() {
            SampleLab lab = new SampleLab(application);
            booking = lab.booked(lab.cell(7), "2026-03-12T12:07:00Z", lab.student("Noor Candlewick"), null)
                    .id()
                    .value();
            claims.giveUpAllOf(booking);
        }

        Claim claim(UUID subject, int fromMinute, int untilMinute) {
            return Claim.ofBooking(
                    booking,
                    Kind.OPERATOR,
                    subject,
                    NOON.plusSeconds(fromMinute * 60L),
                    NOON.plusSeconds(untilMinute * 60L));
        }

        static void insert(Connection connection, Claim claim) throws SQLException {
            try (PreparedStatement insert = connection.prepareStatement(
                    "insert into booking_claims (id, booking_id, kind, subject, starts_at, ends_at) values (?, ?, ?, ?, ?, ?)")) {
                insert.setObject(1, UUID.randomUUID());
                insert.setObject(2, claim.booking());
                insert.setString(3, claim.kind().name());
                insert.setObject(4, claim.subject());
                insert.setObject(5, claim.start().atOffset(ZoneOffset.UTC));
                insert.setObject(6, claim.end().atOffset(ZoneOffset.UTC));
                insert.executeUpdate();
            }
        }

        Connection begun() throws SQLException {
            Connection connection = dataSource.getConnection();
            connection.setAutoCommit(false);
            return connection;
        }

        @Test
        void refusesEveryKindOfOverlap() {
            UUID subject = UUID.randomUUID();
            claims.add(claim(subject, 0, 30));
            for (int[] span : new int[][] {{0, 30}, {10, 20}, {-10, 40}, {-10, 1}, {29, 40}}) {
                assertThatThrownBy(() -> claims.add(claim(subject, span[0], span[1])))
                        .isInstanceOf(DataIntegrityViolationException.class);
            }
            claims.add(claim(subject, 30, 60));
            claims.add(claim(subject, -30, 0));
            claims.add(claim(UUID.randomUUID(), 0, 30));
        }

        @Test
        void refusesAChangeThatWouldOverlap() {
            UUID subject = UUID.randomUUID();
            claims.add(claim(subject, 0, 30));
            claims.add(claim(subject, 30, 60));
            assertThatThrownBy(() -> jdbc.sql(
                                    "update booking_claims set starts_at = ? where subject = ? and starts_at > ?")
                            .param(NOON.plusSeconds(60).atOffset(ZoneOffset.UTC))
                            .param(subject)
                            .param(NOON.atOffset(ZoneOffset.UTC))
                            .update())
                    .isInstanceOf(DataIntegrityViolationException.class);
            assertThatCode(() -> jdbc.sql("update booking_claims set kind = 'ATTENDANT' where subject = ?")
                            .param(subject)
                            .update())
                    .doesNotThrowAnyException();
        }

        @Test
        void makesTheSecondTransactionWaitAndThenRefusesIt() throws Exception {
            second(true, true);
        }

        @Test
        void letsTheSecondTransactionInWhenTheFirstGivesUp() throws Exception {
            second(false, false);
        }

        /** Two transactions, neither of which took a lock of the program, want overlapping times of one subject. */
        private void second(boolean firstCommits, boolean secondIsRefused) throws Exception {
            UUID subject = UUID.randomUUID();
            ExecutorService other = Executors.newSingleThreadExecutor();
            try (Connection first = begun()) {
                insert(first, claim(subject, 0, 30));
                Future<@Nullable Void> second = other.submit(() -> {
                    try (Connection connection = begun()) {
                        insert(connection, claim(subject, 15, 45));
                        connection.commit();
                    }
                    return null;
                });
                assertThatThrownBy(() -> second.get(300, TimeUnit.MILLISECONDS)).isInstanceOf(TimeoutException.class);
                if (firstCommits) {
                    first.commit();
                } else {
                    first.rollback();
                }
                if (secondIsRefused) {
                    assertThatThrownBy(() -> second.get(10, TimeUnit.SECONDS))
                            .isInstanceOf(ExecutionException.class)
                            .cause()
                            .isInstanceOfSatisfying(
                                    SQLException.class,
                                    e -> assertThat(e.getSQLState()).isEqualTo("23P01"));
                } else {
                    second.get(10, TimeUnit.SECONDS);
                }
                assertThat(count(subject)).isEqualTo(1);
            } finally {
                other.shutdownNow();
            }
        }

        private int count(UUID subject) {
            return jdbc.sql("select count(*) from booking_claims where subject = ?")
                    .param(subject)
                    .query(Integer.class)
                    .single();
        }

        @Test
        void letsExactlyOneOfManyIn() throws Exception {
            UUID subject = UUID.randomUUID();
            int rivals = 12;
            ExecutorService threads = Executors.newFixedThreadPool(rivals);
            CountDownLatch go = new CountDownLatch(1);
            try {
                List<Future<Boolean>> tries = new ArrayList<>();
                for (int i = 0; i < rivals; i++) {
                    int minute = i;
                    tries.add(threads.submit(() -> {
                        go.await();
                        try (Connection connection = begun()) {
                            insert(connection, claim(subject, minute, 30 + minute));
                            connection.commit();
                            return true;
                        } catch (SQLException refused) {
                            return false;
                        }
                    }));
                }
                go.countDown();
                int won = 0;
                for (Future<Boolean> one : tries) {
                    won += one.get() ? 1 : 0;
                }
                assertThat(won).isEqualTo(1);
                assertThat(count(subject)).isEqualTo(1);
            } finally {
                threads.shutdownNow();
            }
        }
    }

    @Nested
    @OnH2
    class OnH2Engine extends Cases {

        @Test
        void refusesClaimsAtALevelThatWouldNotSeeTheOthers() throws SQLException {
            try (Connection connection = super.begun()) {
                int before = connection.getTransactionIsolation();
                connection.setTransactionIsolation(Connection.TRANSACTION_REPEATABLE_READ);
                assertThatThrownBy(() -> Cases.insert(connection, super.claim(UUID.randomUUID(), 0, 30)))
                        .hasMessageContaining("read committed");
                connection.rollback();
                connection.setTransactionIsolation(before);
            }
        }
    }

    @Nested
    @OnPostgres
    class OnPostgresEngine extends Cases {}
}
