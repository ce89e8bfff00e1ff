package org.standclear.trail.web;

import java.time.Instant;
import java.util.SortedMap;
import org.jspecify.annotations.Nullable;
import org.standclear.platform.ids.PersonId;
import org.standclear.platform.security.PrintedNames;
import org.standclear.trail.RecordedEntry;

/** One entry as the page shows it. */
record EntryView(
        long number,
        Instant at,
        String words,
        String who,
        @Nullable PersonId actor,
        String kind,
        String subject,
        SortedMap<String, String> facts,
        String hash) {

    static EntryView of(RecordedEntry entry, PrintedNames names) {
        return new EntryView(
                entry.sequence(),
                entry.at(),
                entry.words(),
                entry.actor() == null ? "the application" : names.of(entry.actor()),
                entry.actor(),
                entry.kind(),
                entry.subject(),
                entry.facts(),
                entry.hash());
    }
}
