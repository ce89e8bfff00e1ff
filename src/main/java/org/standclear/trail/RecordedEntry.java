package org.standclear.trail;

import java.time.Instant;
import java.util.Collections;
import java.util.SortedMap;
import java.util.TreeMap;
import org.jspecify.annotations.Nullable;
import org.standclear.platform.ids.LabId;
import org.standclear.platform.ids.PersonId;

/**
 * One entry of the record, as it was stored.
 *
 * @param sequence its place in the lab's chain, counted from 1
 * @param actor who did it; null when the application did it by itself
 * @param factsText the facts as one line of JSON, exactly as stored: the hash covers this text
 * @param hash of this entry, which the next one repeats as its previous hash
 */
public record RecordedEntry(
        LabId lab,
        long sequence,
        Instant at,
        String kind,
        String subject,
        @Nullable PersonId actor,
        String words,
        SortedMap<String, String> facts,
        String factsText,
        String previousHash,
        String hash) {

    public RecordedEntry {
        facts = Collections.unmodifiableSortedMap(new TreeMap<>(facts));
    }

    static RecordedEntry of(StoredEntry row) {
        return new RecordedEntry(
                row.lab(),
                row.sequence(),
                row.at(),
                row.kind(),
                row.subject(),
                row.actor(),
                row.words(),
                StoredText.facts(row.facts()),
                row.facts(),
                row.previousHash(),
                row.hash());
    }
}
