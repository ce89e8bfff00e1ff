package org.standclear.trail;

import java.io.ByteArrayOutputStream;
import java.nio.charset.StandardCharsets;
import java.time.Instant;
import java.time.ZoneOffset;
import java.time.format.DateTimeFormatter;
import java.util.List;
import java.util.Locale;
import org.standclear.platform.digest.Sha256;

/**
 * The hash of an entry: SHA-256 over its fields in a fixed order, each preceded by its length, so that no two different
 * entries have the same bytes. docs/trail.md describes it for those who recompute it with a program of their own.
 */
final class EntryHash {

    /** What the first entry of a lab follows. */
    static final String NONE = "0".repeat(64);

    private static final String FORMAT = "standclear-trail-1";
    private static final DateTimeFormatter MICROSECONDS =
            DateTimeFormatter.ofPattern("uuuu-MM-dd'T'HH:mm:ss.SSSSSS'Z'", Locale.ROOT);

    private EntryHash() {}

    static String of(StoredEntry entry) {
        return Sha256.of(canonical(entry));
    }

    static byte[] canonical(StoredEntry entry) {
        ByteArrayOutputStream bytes = new ByteArrayOutputStream(512);
        fields(entry).forEach(field -> write(field, bytes));
        return bytes.toByteArray();
    }

    private static List<String> fields(StoredEntry entry) {
        return List.of(
                FORMAT,
                entry.lab().toString(),
                Long.toString(entry.sequence()),
                instant(entry.at()),
                entry.kind(),
                entry.subject(),
                entry.actor() == null ? "" : entry.actor().toString(),
                entry.words(),
                entry.facts(),
                entry.previousHash());
    }

    static String instant(Instant at) {
        return MICROSECONDS.format(at.atOffset(ZoneOffset.UTC));
    }

    private static void write(String field, ByteArrayOutputStream bytes) {
        byte[] text = field.getBytes(StandardCharsets.UTF_8);
        bytes.writeBytes((text.length + ":").getBytes(StandardCharsets.US_ASCII));
        bytes.writeBytes(text);
        bytes.write('\n');
    }
}
