package org.standclear.run;

import java.time.Instant;
import java.util.UUID;
import org.jspecify.annotations.Nullable;
import org.standclear.platform.ids.BookingId;
import org.standclear.platform.ids.CellId;
import org.standclear.platform.ids.PersonId;
import org.standclear.platform.ids.ReleaseId;
import org.standclear.platform.ids.RunId;

/**
 * One thing that happened at a cell. Never changed, never deleted: a correction is another event.
 *
 * @param booking null when nobody was booked
 * @param run null when no run had started
 * @param release the release under which it started; null for anything else
 * @param item number on the close-out list; null for anything else
 * @param answer what was tapped, or empty
 * @param words one sentence, or empty
 * @param account whose session or screen it came from
 * @param corrects the event that a correction is about
 */
public record RunEvent(
        UUID id,
        CellId cell,
        @Nullable BookingId booking,
        @Nullable RunId run,
        @Nullable ReleaseId release,
        Kind kind,
        @Nullable Integer item,
        String answer,
        String words,
        PersonId account,
        Instant at,
        @Nullable UUID corrects) {

    /** What can happen. */
    public enum Kind {
        STARTED("started"),
        E_STOP_PRESS("e-stop pressed"),
        PROTECTIVE_STOP("protective stop"),
        RESET("stop reset"),
        PASS("pass counted"),
        FINISHED("finished"),
        CLOSE_OUT("close-out"),
        CORRECTION("correction"),
        HANDOVER("e-stop handed over"),
        WATCHED("first run watched"),
        CREDIT("minutes credited");

        private final String words;

        Kind(String words) {
            this.words = words;
        }

        /** The event as people say it. */
        public String words() {
            return words;
        }

        /** Whether the arm was stopped. */
        public boolean isStop() {
            return this == E_STOP_PRESS || this == PROTECTIVE_STOP;
        }
    }
}
