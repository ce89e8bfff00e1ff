package org.standclear.incident;

import java.time.Instant;
import org.jspecify.annotations.Nullable;
import org.standclear.platform.ids.CellId;
import org.standclear.platform.ids.IncidentId;
import org.standclear.platform.ids.PersonId;
import org.standclear.platform.ids.RunId;

/** Takes in reports. What the class asks for happens in the same transaction: hold, lapses, frozen evidence. */
public interface IncidentReports {

    /** Takes in a report, short or full. */
    Reported report(Report report);

    /** Fills in the full form of a report; the class may rise by it and never falls. */
    IncidentOutcome fill(IncidentId id, IncidentClass kind, Incident.Form form, PersonId by);

    /**
     * A report.
     *
     * @param happenedAt null for just now
     * @param run null when the run that was going on is to be looked up
     * @param form null for the four fields of the short form
     */
    record Report(
            CellId cell,
            IncidentClass kind,
            String sentence,
            @Nullable Instant happenedAt,
            Teller teller,
            @Nullable RunId run,
            Incident.@Nullable Form form) {

        /** The short form: cell, class, one sentence. */
        public static Report brief(CellId cell, IncidentClass kind, String sentence, Teller teller) {
            return new Report(cell, kind, sentence, null, teller, null, null);
        }
    }

    /** Who tells it. */
    sealed interface Teller {

        /** Somebody with their name. */
        record Named(PersonId person, ReporterPart part) implements Teller {}

        /** Somebody at a shared screen, without a name; the account is the screen's. */
        record AtScreen(PersonId screen) implements Teller {}

        /** Somebody without a name: who it was is kept nowhere. */
        record Anonymous() implements Teller {}
    }

    /** What came of a report. */
    sealed interface Reported {

        /**
         * It is kept.
         *
         * @param receipt with which somebody without a name can look at the answers; null for a report with a name
         */
        record Kept(
                IncidentId incident, int number, @Nullable String receipt) implements Reported {}

        /** It does not fit; says what is the matter. */
        record Refused(String field, String says) implements Reported {}
    }
}
