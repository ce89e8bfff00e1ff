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

    /** A receipt nobody has, for a form to carry: sent twice, the form leads to the same page without the server keeping it. */
    String newReceipt();

    /**
     * Fills in the full form of a report; the class may rise by it and never falls. What stood there before is kept. Refused to
     * whoever had a part in it: they add a statement.
     */
    IncidentOutcome fill(IncidentId id, Filling filling, PersonId by);

    /** Adds what the person has to say about it; nobody changes it afterwards, and it changes nothing else. */
    IncidentOutcome state(IncidentId id, String words, PersonId by);

    /** The same without knowing what stood there. */
    IncidentOutcome fill(IncidentId id, IncidentClass kind, Incident.Form form, PersonId by);

    /**
     * A form as it is sent.
     *
     * @param seen how many states of the form its sender knew of; null when nobody asked
     */
    record Filling(
            IncidentClass kind,
            Incident.Form form,
            @Nullable Integer seen) {}

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

        /**
         * Somebody at a shared screen, without a name; the account is the screen's.
         *
         * @param receipt that the form carried; null for a fresh one
         */
        record AtScreen(PersonId screen, @Nullable String receipt) implements Teller {

            /** With a fresh receipt. */
            public AtScreen(PersonId screen) {
                this(screen, null);
            }
        }

        /**
         * Somebody without a name: who it was is kept nowhere.
         *
         * @param receipt that the form carried; null for a fresh one
         */
        record Anonymous(@Nullable String receipt) implements Teller {

            /** With a fresh receipt. */
            public Anonymous() {
                this(null);
            }
        }
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
