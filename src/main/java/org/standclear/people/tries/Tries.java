package org.standclear.people.tries;

import java.time.Clock;
import java.time.Duration;
import java.time.Instant;
import java.util.Optional;
import org.jspecify.annotations.Nullable;
import org.springframework.dao.DuplicateKeyException;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.stereotype.Service;
import org.standclear.platform.digest.Sha256;
import org.standclear.platform.time.SqlTime;

/**
 * Counts tries before they are compared, so that many at once cannot slip through together; after a few wrong ones each
 * further one is followed by a pause that doubles.
 */
@Service
public class Tries {

    private static final Duration KEPT = Duration.ofDays(2);

    private final OwnConnections connections;
    private final Clock clock;

    Tries(OwnConnections connections, Clock clock) {
        this.connections = connections;
        this.clock = clock;
    }

    /** What is tried; each has its own patience. */
    public enum Kind {
        /** Passwords of one account. */
        ACCOUNT(5, Duration.ofSeconds(30), Duration.ofMinutes(15)),
        /** Passwords from one client address; a whole classroom may share one. */
        ADDRESS(40, Duration.ofSeconds(30), Duration.ofMinutes(15)),
        /** Signing PINs of one person. */
        PIN(5, Duration.ofMinutes(1), Duration.ofHours(1)),
        /** Personal tokens from one client address. */
        TOKEN(20, Duration.ofSeconds(30), Duration.ofMinutes(15)),
        /** The set-up code from one client address. */
        SET_UP(5, Duration.ofMinutes(1), Duration.ofHours(1));

        private final int free;
        private final Duration firstPause;
        private final Duration longestPause;

        Kind(int free, Duration firstPause, Duration longestPause) {
            this.free = free;
            this.firstPause = firstPause;
            this.longestPause = longestPause;
        }

        /** The pause that the given number of wrong tries in a row leads to; zero while there are tries left. */
        Duration pauseAfter(int failures) {
            if (failures < free) {
                return Duration.ZERO;
            }
            Duration pause = firstPause;
            for (int i = free; i < failures && pause.compareTo(longestPause) < 0; i++) {
                pause = pause.multipliedBy(2);
            }
            return pause.compareTo(longestPause) < 0 ? pause : longestPause;
        }

        int triesLeftAfter(int failures) {
            return Math.max(0, free - failures);
        }

        /** Wrong tries are forgotten after this long without another one. */
        Duration memory() {
            return longestPause.multipliedBy(4);
        }
    }

    /** Whether a value may be compared. */
    public sealed interface Begun {

        /** It may; if it is wrong, so many tries are left before a pause. */
        record Go(int triesLeft) implements Begun {}

        /** Nothing is compared before that instant. */
        record Paused(Instant until) implements Begun {}
    }

    /** Counts a try as wrong until {@link #right} or {@link #takeBack} is said, unless there is a pause. */
    public Begun begin(Kind kind, String subject) {
        String key = Sha256.of(subject);
        for (int attempt = 0; ; attempt++) {
            try {
                return connections.inOwnTransaction(jdbc -> begin(jdbc, kind, key));
            } catch (DuplicateKeyException anotherFirstTry) {
                if (attempt == 3) {
                    throw anotherFirstTry;
                }
            }
        }
    }

    private Begun begin(JdbcClient jdbc, Kind kind, String key) {
        Instant now = SqlTime.stored(clock.instant());
        Optional<Row> known = lock(jdbc, kind, key);
        Instant paused = known.map(Row::pausedUntil).orElse(null);
        if (paused != null && now.isBefore(paused)) {
            return new Begun.Paused(paused);
        }
        int failures = 1
                + known.filter(row -> row.lastAt().plus(kind.memory()).isAfter(now))
                        .map(Row::failures)
                        .orElse(0);
        Duration pause = kind.pauseAfter(failures);
        store(jdbc, kind, key, new Row(failures, now, pause.isZero() ? null : now.plus(pause)), known.isPresent());
        return new Begun.Go(kind.triesLeftAfter(failures));
    }

    /** The try was right: what was wrong before it is forgotten. */
    public void right(Kind kind, String subject) {
        String key = Sha256.of(subject);
        connections.inOwnTransaction(jdbc -> {
            forgetOldOnes(jdbc);
            return jdbc.sql("delete from tries where kind = :kind and subject = :subject")
                    .param("kind", kind.name())
                    .param("subject", key)
                    .update();
        });
    }

    /** The try was right, but says nothing about the wrong ones before it. */
    public void takeBack(Kind kind, String subject) {
        String key = Sha256.of(subject);
        connections.inOwnTransaction(jdbc -> {
            Optional<Row> known = lock(jdbc, kind, key);
            known.ifPresent(row -> {
                int failures = Math.max(0, row.failures() - 1);
                boolean pause = kind.pauseAfter(failures).isZero();
                store(jdbc, kind, key, new Row(failures, row.lastAt(), pause ? null : row.pausedUntil()), true);
            });
            return known.isPresent();
        });
    }

    private void forgetOldOnes(JdbcClient jdbc) {
        jdbc.sql("delete from tries where last_at < :old")
                .param("old", SqlTime.toSql(clock.instant().minus(KEPT)))
                .update();
    }

    private static Optional<Row> lock(JdbcClient jdbc, Kind kind, String key) {
        return jdbc.sql("""
                select failures, last_at, paused_until from tries
                where kind = :kind and subject = :subject for update""")
                .param("kind", kind.name())
                .param("subject", key)
                .query((row, number) -> new Row(
                        row.getInt("failures"),
                        SqlTime.read(row, "last_at"),
                        SqlTime.readNullable(row, "paused_until")))
                .optional();
    }

    private static void store(JdbcClient jdbc, Kind kind, String key, Row row, boolean known) {
        jdbc.sql(known ? """
                        update tries set failures = :failures, last_at = :at, paused_until = :until
                        where kind = :kind and subject = :subject""" : """
                        insert into tries (kind, subject, failures, last_at, paused_until)
                        values (:kind, :subject, :failures, :at, :until)""")
                .param("kind", kind.name())
                .param("subject", key)
                .param("failures", row.failures())
                .param("at", SqlTime.toSql(row.lastAt()))
                .param("until", SqlTime.toSql(row.pausedUntil()), java.sql.Types.TIMESTAMP_WITH_TIMEZONE)
                .update();
    }

    private record Row(
            int failures, Instant lastAt, @Nullable Instant pausedUntil) {}
}
