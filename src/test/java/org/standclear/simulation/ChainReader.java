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
import java.util.HashMap;
import java.util.HexFormat;
import java.util.List;
import java.util.Map;
import java.util.Objects;

/** Recomputes each lab's chain as docs/trail.md describes it, going on from where it stopped the last time. */
final class ChainReader {

    private static final String NONE = "0".repeat(64);
    private static final DateTimeFormatter MICROS = DateTimeFormatter.ofPattern("uuuu-MM-dd'T'HH:mm:ss.SSSSSS'Z'");

    private final Connection connection;

    /** Where each lab's chain ended the last time. */
    private final Map<Object, Link> ends = new HashMap<>();

    ChainReader(Connection connection) {
        this.connection = connection;
    }

    /** An entry as the other rules need it. */
    record Entry(String lab, String kind, String subject, String facts) {}

    private record Link(long sequence, String hash) {}

    List<Entry> next(List<String> faults) throws SQLException {
        List<Entry> fresh = new ArrayList<>();
        long all = 0;
        for (Map<String, Object> head : Rows.of(connection, "select * from trail_heads order by lab")) {
            Object lab = Objects.requireNonNull(head.get("lab"));
            Link last = ends.getOrDefault(lab, new Link(0, NONE));
            for (Map<String, Object> row : Rows.of(
                    connection,
                    "select * from trail_entries where lab = ? and sequence > ? order by sequence",
                    lab,
                    last.sequence())) {
                last = follow(last, row, faults);
                fresh.add(new Entry(
                        lab.toString(), Rows.text(row, "kind"), Rows.text(row, "subject"), Rows.text(row, "facts")));
            }
            Object sequence = head.get("sequence");
            if ((sequence == null ? 0 : ((Number) sequence).longValue()) != last.sequence()
                    || !Rows.text(head, "hash").equals(last.hash())) {
                faults.add("the head of the record is not its last entry " + last.sequence());
            }
            ends.put(lab, last);
            all += last.sequence();
        }
        Map<String, Object> counted =
                Rows.of(connection, "select count(*) as n from trail_entries").get(0);
        if (Rows.number(counted, "n") != all) {
            faults.add("the record has entries that no head leads to");
        }
        return fresh;
    }

    private static Link follow(Link last, Map<String, Object> row, List<String> faults) {
        if (Rows.number(row, "sequence") != last.sequence() + 1
                || !Rows.text(row, "previous_hash").equals(last.hash())
                || !Rows.text(row, "hash").equals(hashOf(row))) {
            faults.add("the record is not whole at entry " + (last.sequence() + 1));
        }
        return new Link(last.sequence() + 1, Rows.text(row, "hash"));
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
