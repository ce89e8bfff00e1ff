package org.standclear.simulation;

import java.io.ByteArrayOutputStream;
import java.nio.charset.StandardCharsets;
import java.security.MessageDigest;
import java.security.NoSuchAlgorithmException;
import java.sql.Connection;
import java.sql.SQLException;
import java.sql.Timestamp;
import java.time.Instant;
import java.time.OffsetDateTime;
import java.time.ZoneOffset;
import java.time.format.DateTimeFormatter;
import java.util.ArrayList;
import java.util.HexFormat;
import java.util.List;
import java.util.Map;
import java.util.Objects;

/** Recomputes the record's chain as docs/trail.md describes it, going on from where it stopped the last time. */
final class ChainReader {

    private static final String NONE = "0".repeat(64);
    private static final DateTimeFormatter MICROS = DateTimeFormatter.ofPattern("uuuu-MM-dd'T'HH:mm:ss.SSSSSS'Z'");

    private final Connection connection;
    private long sequence;
    private String hash = NONE;

    ChainReader(Connection connection) {
        this.connection = connection;
    }

    /** An entry as the other rules need it. */
    record Entry(String kind, String subject, String facts) {}

    List<Entry> next(List<String> faults) throws SQLException {
        List<Entry> fresh = new ArrayList<>();
        for (Map<String, Object> row :
                Rows.of(connection, "select * from trail_entries where sequence > ? order by sequence", sequence)) {
            if (Rows.number(row, "sequence") != sequence + 1
                    || !Rows.text(row, "previous_hash").equals(hash)
                    || !Rows.text(row, "hash").equals(hashOf(row))) {
                faults.add("the record is not whole at entry " + (sequence + 1));
            }
            sequence++;
            hash = Rows.text(row, "hash");
            fresh.add(new Entry(Rows.text(row, "kind"), Rows.text(row, "subject"), Rows.text(row, "facts")));
        }
        Map<String, Object> head =
                Rows.of(connection, "select * from trail_heads").get(0);
        Object last = head.get("sequence");
        if ((last == null ? 0 : ((Number) last).longValue()) != sequence
                || !Rows.text(head, "hash").equals(hash)) {
            faults.add("the head of the record is not its last entry " + sequence);
        }
        return fresh;
    }

    private static String hashOf(Map<String, Object> row) {
        Instant instant = row.get("at") instanceof Timestamp at
                ? at.toInstant()
                : ((OffsetDateTime) Objects.requireNonNull(row.get("at"))).toInstant();
        String at = MICROS.format(instant.atOffset(ZoneOffset.UTC));
        ByteArrayOutputStream bytes = new ByteArrayOutputStream();
        for (String field : List.of(
                "standclear-trail-1",
                Rows.text(row, "lab"),
                Rows.text(row, "sequence"),
                at,
                Rows.text(row, "kind"),
                Rows.text(row, "subject"),
                Rows.text(row, "actor"),
                Rows.text(row, "words"),
                Rows.text(row, "facts"),
                Rows.text(row, "previous_hash"))) {
            byte[] utf8 = field.getBytes(StandardCharsets.UTF_8);
            bytes.writeBytes((utf8.length + ":").getBytes(StandardCharsets.UTF_8));
            bytes.writeBytes(utf8);
            bytes.write('\n');
        }
        return sha256(bytes.toByteArray());
    }

    static String sha256(byte[] bytes) {
        try {
            return HexFormat.of().formatHex(MessageDigest.getInstance("SHA-256").digest(bytes));
        } catch (NoSuchAlgorithmException impossible) {
            throw new AssertionError(impossible);
        }
    }
}
