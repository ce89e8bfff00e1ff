package org.standclear.trail;

import java.util.LinkedHashMap;
import java.util.Map;
import org.jspecify.annotations.Nullable;
import tools.jackson.databind.json.JsonMapper;

/** Entries as JSON lines with exactly the fields that the hash covers; docs/trail.md describes them. */
public final class RecordLines {

    private static final JsonMapper JSON = JsonMapper.shared();

    private RecordLines() {}

    /** One entry, without the line feed. */
    public static String json(RecordedEntry entry) {
        Map<String, @Nullable Object> fields = new LinkedHashMap<>();
        fields.put("lab", entry.lab().toString());
        fields.put("sequence", entry.sequence());
        fields.put("at", EntryHash.instant(entry.at()));
        fields.put("kind", entry.kind());
        fields.put("subject", entry.subject());
        fields.put("actor", entry.actor() == null ? null : entry.actor().toString());
        fields.put("words", entry.words());
        fields.put("facts", entry.factsText());
        fields.put("previous_hash", entry.previousHash());
        fields.put("hash", entry.hash());
        return JSON.writeValueAsString(fields);
    }
}
