package org.standclear.trail;

import org.standclear.platform.ids.LabId;

/** Number and hash of an entry as somebody wrote them down; they show a rewritten or shortened record. */
public record KeptHash(long entry, String hash) {

    /** Whether the record still has that entry with that hash. */
    public Comparison compare(TrailReader reader, LabId lab) {
        return reader.at(lab, entry)
                .map(found -> found.hash().equals(hash)
                        ? new Comparison(true, "Entry " + entry + " still has the hash that was written down.")
                        : new Comparison(
                                false,
                                "Entry " + entry + " does not have the hash that was written down, but " + found.hash()
                                        + ". The record was written anew since, or the hash was copied wrongly."))
                .orElseGet(() -> new Comparison(
                        false,
                        "There is no entry " + entry
                                + ". The record was cut off since, or the number was copied wrongly."));
    }

    /** What the comparison says. */
    public record Comparison(boolean same, String says) {}
}
