package org.standclear.booking;

import java.time.Instant;
import java.util.UUID;
import org.standclear.platform.ids.CellId;
import org.standclear.platform.ids.PersonId;

/** A time for which staff keep a cell to themselves. */
public record CellClosure(
        UUID id, CellId cell, Instant start, Instant end, Kind kind, String words, PersonId madeBy, Instant madeAt) {

    /** What staff keep it for. */
    public enum Kind {
        CLASS("class"),
        DEMONSTRATION("demonstration"),
        MAINTENANCE("maintenance"),
        EXAM("exam");

        private final String words;

        Kind(String words) {
            this.words = words;
        }

        /** The kind as people say it. */
        public String words() {
            return words;
        }
    }
}
