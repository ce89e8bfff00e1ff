package org.standclear.cell;

import java.time.Instant;
import java.time.LocalDate;
import java.util.List;
import java.util.UUID;
import org.jspecify.annotations.Nullable;
import org.standclear.platform.ids.CellId;
import org.standclear.platform.ids.PersonId;

/** Inspections and risk-assessment reviews: how often, when done, when due. What is late gates releases. */
public interface RecurringDuties {

    /** What is due on the cell and when; a duty without an interval is not among it. */
    List<DutyDue> due(CellId cell);

    /** What was done on the cell, latest first. */
    List<Done> done(CellId cell);

    /** The intervals that were ever set for the cell, latest first. */
    List<Interval> intervals(CellId cell);

    /** Keeps that a duty was done; the caller has checked that the person may. */
    Kept record(RecordDuty order);

    /** Sets how often; the caller has checked that the person may. */
    void setInterval(CellId cell, RecurringDuty duty, int days, String reason, PersonId by);

    /**
     * One that was done.
     *
     * @param doneBy the competent person by name, who may have no account
     * @param found what was found, in words
     */
    record Done(
            UUID id,
            CellId cell,
            RecurringDuty duty,
            LocalDate on,
            String doneBy,
            String found,
            int cellVersion,
            PersonId recordedBy,
            Instant recordedAt) {}

    /**
     * How often from when on, and why.
     *
     * @param firstDue when it is due the first time; null when that is the day on which the interval was set
     */
    record Interval(
            RecurringDuty duty,
            int days,
            PersonId by,
            Instant at,
            String reason,
            @Nullable LocalDate firstDue) {}

    /** What somebody records. */
    record RecordDuty(CellId cell, RecurringDuty duty, LocalDate on, String doneBy, String found, PersonId by) {}

    /** What came of it. */
    sealed interface Kept {

        /** It is on record. */
        record Recorded(Done done) implements Kept {}

        /** It is not: says why, and with which field. */
        record Refused(String field, String says) implements Kept {}
    }
}
