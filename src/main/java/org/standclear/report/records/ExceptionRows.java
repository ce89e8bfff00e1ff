package org.standclear.report.records;

import java.math.BigInteger;
import java.nio.charset.StandardCharsets;
import java.sql.ResultSet;
import java.sql.SQLException;
import java.time.Duration;
import java.time.Instant;
import java.time.LocalDate;
import java.time.temporal.ChronoUnit;
import java.util.List;
import java.util.Optional;
import java.util.UUID;
import org.jspecify.annotations.Nullable;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.stereotype.Repository;
import org.standclear.platform.digest.Sha256;
import org.standclear.platform.time.LabTime;
import org.standclear.platform.time.SqlTime;
import org.standclear.report.records.ExceptionQueries.Query;

/** Finds what a rule is about, and measures it. */
@Repository
class ExceptionRows {

    private final JdbcClient jdbc;

    private final LabTime labTime;

    ExceptionRows(JdbcClient jdbc, LabTime labTime) {
        this.jdbc = jdbc;
        this.labTime = labTime;
    }

    /** Something a rule found, with its measure in the rule's unit. */
    record Found(Query rule, UUID id, String href, String cell, Instant at, long measure) {}

    List<Found> of(Query rule, int threshold, Days days, Instant now) {
        return days.ask(jdbc, rule.sql()).query((row, number) -> found(rule, threshold, row, now)).list().stream()
                .flatMap(Optional::stream)
                .toList();
    }

    private Optional<Found> found(Query rule, int threshold, ResultSet row, Instant now) throws SQLException {
        UUID id = row.getObject("id", UUID.class);
        // a date becomes an instant in the lab's zone; the database's session has a zone of its own
        Instant at = rule.measure() == ExceptionQueries.Measure.DAYS
                ? row.getObject("at", LocalDate.class)
                        .atStartOfDay(labTime.zone())
                        .toInstant()
                : SqlTime.read(row, "at");
        Instant until = SqlTime.readNullable(row, "until_at");
        long measure = rule.measure() == ExceptionQueries.Measure.DAYS
                ? ChronoUnit.DAYS.between(labTime.date(at), labTime.date(now))
                : measure(rule, threshold, row.getInt("n"), lasted(at, until, now));
        boolean shown = switch (rule.measure()) {
            case SECONDS_BELOW -> measure < threshold;
            case ONE_IN -> threshold > 0 && drawn(id, threshold);
            default -> measure >= threshold;
        };
        String href = "/" + row.getString("link") + "/" + row.getObject("target", UUID.class);
        return shown ? Optional.of(new Found(rule, id, href, row.getString("cell"), at, measure)) : Optional.empty();
    }

    private static Duration lasted(Instant at, @Nullable Instant until, Instant now) {
        return Duration.between(at, until == null ? now : until);
    }

    private static long measure(Query rule, int threshold, int n, Duration lasted) {
        return switch (rule.measure()) {
            case NUMBER -> n;
            case MINUTES -> lasted.toMinutes();
            case HOURS -> lasted.toHours();
            case DAYS -> throw new IllegalStateException("days are counted by the lab's dates");
            case SECONDS_BELOW -> lasted.toSeconds();
            case ONE_IN -> threshold;
        };
    }

    /** By the hash of the id, so that nobody can tell beforehand and everybody can afterwards. */
    static boolean drawn(UUID id, int oneIn) {
        String hash = Sha256.of(id.toString().getBytes(StandardCharsets.UTF_8));
        return new BigInteger(hash, 16).mod(BigInteger.valueOf(oneIn)).signum() == 0;
    }
}
