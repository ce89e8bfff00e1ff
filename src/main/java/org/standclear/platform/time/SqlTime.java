package org.standclear.platform.time;

import java.sql.ResultSet;
import java.sql.SQLException;
import java.time.Instant;
import java.time.OffsetDateTime;
import java.time.ZoneOffset;
import java.time.temporal.ChronoUnit;
import org.jspecify.annotations.Nullable;

/** Instants as both databases take them: {@code timestamp with time zone}, microseconds, UTC. */
public final class SqlTime {

    private SqlTime() {}

    /** The parameter for a column of instants; null stays null. */
    public static @Nullable OffsetDateTime toSql(@Nullable Instant instant) {
        return instant == null ? null : stored(instant).atOffset(ZoneOffset.UTC);
    }

    /** The instant as it reads back: both databases keep microseconds and would otherwise round differently. */
    public static Instant stored(Instant instant) {
        return instant.truncatedTo(ChronoUnit.MICROS);
    }

    /** Reads a column that is never null. */
    public static Instant read(ResultSet row, String column) throws SQLException {
        return row.getObject(column, OffsetDateTime.class).toInstant();
    }

    /** Reads a column that may be null. */
    public static @Nullable Instant readNullable(ResultSet row, String column) throws SQLException {
        OffsetDateTime value = row.getObject(column, OffsetDateTime.class);
        return value == null ? null : value.toInstant();
    }
}
