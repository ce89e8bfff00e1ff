package org.standclear.incident;

import java.time.Instant;
import java.util.EnumSet;
import java.util.List;
import java.util.Set;
import java.util.stream.Stream;
import org.jspecify.annotations.Nullable;
import org.standclear.platform.ids.BookingId;
import org.standclear.platform.ids.CellId;
import org.standclear.platform.ids.IncidentId;
import org.standclear.platform.ids.PersonId;
import org.standclear.platform.ids.RunId;

/**
 * Something that went wrong, or nearly did.
 *
 * @param number counts within the lab, for people
 * @param run that was going on, as far as is known
 * @param sentence what happened, in one sentence
 * @param reporter null when it was reported without a name, or from a bench screen
 * @param anonymous whether a receipt stands in place of a name
 * @param form null until the full form is filled in
 * @param formDueAt null when no form is due
 * @param formDoneAt null while it is due
 * @param reviewer who took the review; null while nobody has
 * @param involved people who had a part in it, so that they do not review it
 */
public record Incident(
        IncidentId id,
        int number,
        CellId cell,
        @Nullable RunId run,
        @Nullable BookingId booking,
        IncidentClass kind,
        String sentence,
        Instant happenedAt,
        Instant reportedAt,
        @Nullable PersonId reporter,
        ReporterPart reporterPart,
        boolean anonymous,
        @Nullable Form form,
        @Nullable Instant formDueAt,
        @Nullable Instant formDoneAt,
        IncidentState state,
        @Nullable PersonId reviewer,
        @Nullable Instant closedAt,
        List<PersonId> involved,
        int version) {

    public Incident {
        involved = List.copyOf(involved);
    }

    /** Whether the person had a part in it. */
    public boolean involves(PersonId person) {
        return involved.contains(person) || (person.equals(reporter) && reporterPart.isInvolved());
    }

    /** Everybody whom it names: who had a part in it, and who reported it with a name. */
    public List<PersonId> named() {
        return Stream.concat(involved.stream(), Stream.ofNullable(reporter))
                .distinct()
                .toList();
    }

    /** Whether the form is still to be filled in. */
    public boolean formIsDue() {
        return formDueAt != null && formDoneAt == null;
    }

    /** Whether the form is late at that instant, or was filled in late. */
    public boolean formIsLate(Instant now) {
        return formDueAt != null && (formDoneAt == null ? now : formDoneAt).isAfter(formDueAt);
    }

    /** Whether it keeps the cell from running until a restart is approved. */
    public boolean holdsCell() {
        return kind.holdsCell() && state != IncidentState.CLOSED;
    }

    /**
     * What the full form adds.
     *
     * @param story empty while only the severities are known, from a review
     * @param actual how bad it was
     * @param foreseeable how bad it could reasonably have been
     * @param outcomes in the words of 29 CFR 1904.7; empty when none of them
     */
    public record Form(
            String story, String doneAtOnce, Severity actual, Severity foreseeable, Set<RecordableOutcome> outcomes) {

        public Form {
            outcomes =
                    Set.copyOf(outcomes.isEmpty() ? EnumSet.noneOf(RecordableOutcome.class) : EnumSet.copyOf(outcomes));
        }

        /** Whether somebody has told the whole of it. */
        public boolean isFilledIn() {
            return !story.isBlank();
        }
    }
}
