package org.standclear.people.tries;

import java.time.Clock;
import java.time.Duration;
import java.time.Instant;
import java.util.Objects;
import java.util.Optional;
import org.jspecify.annotations.Nullable;
import org.springframework.dao.DuplicateKeyException;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.stereotype.Service;
import org.standclear.platform.digest.Sha256;
import org.standclear.platform.time.SqlTime;

/**
 * Counts tries before they are compared, so that many at once cannot slip through together; after a few wrong ones each
 * further one is followed by a pause that doubles. Wrong tries wear off one by one, whether or not others are made.
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

        /** One wrong try wears off in this time: as many as are free in four of the longest pauses. */
        Duration wearsOffIn() {
            return longestPause.multipliedBy(4).dividedBy(free);
        }
    }

    /** Whether a value may be compared. */
    public sealed interface Begun {

        /** It may; if it is wrong, so many tries are left before a pause, and the pause lasts until that instant. */
        record Go(int triesLeft, @Nullable Instant pause) implements Begun {}

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
        Row worn = known.map(row -> row.wornAt(now, kind.wearsOffIn())).orElse(new Row(0, now, null));
        int failures = worn.failures() + 1;
        Duration pause = kind.pauseAfter(failures);
        Instant until = pause.isZero() ? null : now.plus(pause);
        store(jdbc, kind, key, new Row(failures, worn.countedAt(), until), known.isPresent());
        return new Begun.Go(kind.triesLeftAfter(failures), until);
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

    /**
     * The try was right, but says nothing about the wrong ones before it: those stay and go on wearing off. The pause
     * that it led to is over; one that a wrong try led to meanwhile is not.
     */
    public void takeBack(Kind kind, String subject, Begun.Go begun) {
        String key = Sha256.of(subject);
        connections.inOwnTransaction(jdbc -> {
            Optional<Row> known = lock(jdbc, kind, key);
            known.ifPresent(row -> {
                int failures = Math.max(0, row.failures() - 1);
                boolean over = kind.pauseAfter(failures).isZero() || Objects.equals(row.pausedUntil(), begun.pause());
                store(jdbc, kind, key, new Row(failures, row.countedAt(), over ? null : row.pausedUntil()), true);
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
                .param("at", SqlTime.toSql(row.countedAt()))
                .param("until", SqlTime.toSql(row.pausedUntil()), java.sql.Types.TIMESTAMP_WITH_TIMEZONE)
                .update();
    }

    /**
     * What is kept.
     *
     * @param countedAt up to when the wearing off is counted; the column says last_at
     */
    private record Row(
            int failures, Instant countedAt, @Nullable Instant pausedUntil) {

        /** The same later on. What is left of a step goes on counting, so that many tries do not keep the old ones. */
        Row wornAt(Instant now, Duration step) {
            long steps = Math.max(0, Duration.between(countedAt, now).dividedBy(step));
            return steps >= failures
                    ? new Row(0, now, pausedUntil)
                    : new Row(failures - (int) steps, countedAt.plus(step.multipliedBy(steps)), pausedUntil);
        }
    }
}
