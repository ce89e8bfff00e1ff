package org.standclear.trail;

import java.time.Instant;
import org.jspecify.annotations.Nullable;
import org.standclear.platform.ids.LabId;
import org.standclear.platform.ids.PersonId;

/**
 * An entry as its row has it.
 *
 * @param facts as JSON, exactly as stored: the hash covers this text
 */
record StoredEntry(
        LabId lab,
        long sequence,
        Instant at,
        String kind,
        String subject,
        @Nullable PersonId actor,
        String words,
        String facts,
        String previousHash,
        String hash) {

    /** The entry that follows the last one, with its hash. */
    static StoredEntry following(Head head, PendingEntry pending) {
        TrailEntry entry = pending.entry();
        StoredEntry unhashed = new StoredEntry(
                entry.lab(),
                head.sequence() + 1,
                pending.at(),
                StoredText.clean(entry.kind(), 80),
                StoredText.clean(entry.subject(), 200),
                entry.actor(),
                StoredText.clean(entry.words(), 2000),
                StoredText.facts(entry.facts()),
                head.hash(),
                EntryHash.NONE);
        return unhashed.hashed();
    }

    private StoredEntry hashed() {
        return new StoredEntry(lab, sequence, at, kind, subject, actor, words, facts, previousHash, EntryHash.of(this));
    }

    /** Where a lab's chain ends: 0 and zeros when it has no entry yet. */
    record Head(long sequence, String hash) {}

    /** An entry that waits for the end of its transaction. */
    record PendingEntry(TrailEntry entry, Instant at) {}
}
