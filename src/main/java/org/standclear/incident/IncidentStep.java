package org.standclear.incident;

import java.time.Instant;
import java.util.UUID;
import org.jspecify.annotations.Nullable;
import org.standclear.platform.ids.PersonId;

/**
 * One step in the life of an incident. Never changed, never deleted.
 *
 * @param words for those who work on it
 * @param forReporter what the reporter gets to read; empty when nothing
 * @param by null for a report without a name
 */
public record IncidentStep(
        UUID id,
        Kind kind,
        String words,
        String forReporter,
        @Nullable PersonId by,
        Instant at) {

    /** What kind of step it was. */
    public enum Kind {
        REPORTED("reported"),
        FORM_FILLED("form filled in"),
        STATED("statement added"),
        CELL_HELD("cell held"),
        EVIDENCE_FROZEN("evidence frozen"),
        CLASSIFIED("class set"),
        REVIEW_TAKEN("review begun"),
        PERSON_NAMED("person named"),
        PHOTO_ADDED("photo added"),
        CAUSE_ADDED("cause added"),
        CAUSE_STRUCK("cause crossed out"),
        ACTION_AGREED("action agreed"),
        ACTION_DONE("action done"),
        ACTION_CHECKED("effect checked"),
        ANSWERED("word to the reporter"),
        RISK_ASSESSMENT("risk assessment reviewed"),
        RESTART_APPROVED("restart approved"),
        CLOSED("closed"),
        OPENED_AGAIN("opened again");

        private final String words;

        Kind(String words) {
            this.words = words;
        }

        /** The step as people say it. */
        public String words() {
            return words;
        }
    }
}
