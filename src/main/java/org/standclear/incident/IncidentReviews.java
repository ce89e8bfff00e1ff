package org.standclear.incident;

import java.time.LocalDate;
import java.util.List;
import java.util.Optional;
import java.util.UUID;
import org.jspecify.annotations.Nullable;
import org.standclear.platform.ids.IncidentId;
import org.standclear.platform.ids.PersonId;

/** The review of an incident. Every act is refused to somebody who had a part in it, or who is no reviewer. */
public interface IncidentReviews {

    /** Why the person may not review it; empty when they may. */
    Optional<String> whyNot(Incident incident, PersonId by);

    /** How deep the review has to go. */
    ReviewLevel level(Incident incident);

    /** Takes the review. */
    IncidentOutcome take(IncidentId id, PersonId by);

    /** Sets the class and both severities; a higher class holds the cell and freezes evidence at once. */
    IncidentOutcome classify(IncidentId id, Classification as, PersonId by);

    /** Names somebody who had a part in it. */
    IncidentOutcome name(IncidentId id, PersonId person, String part, PersonId by);

    /** Adds a cause to the tree. */
    IncidentOutcome addCause(IncidentId id, NewCause cause, PersonId by);

    /** Strikes a cause out; it stays readable. */
    IncidentOutcome strikeCause(IncidentId id, UUID cause, PersonId by);

    /** Agrees on a corrective action. */
    IncidentOutcome agree(IncidentId id, NewAction action, PersonId by);

    /** Says a word to the reporter. */
    IncidentOutcome answer(IncidentId id, String words, PersonId by);

    /** Notes that the cell's risk assessment was reviewed. */
    IncidentOutcome riskReviewed(
            IncidentId id, LocalDate on, String outcome, @Nullable Integer cellVersion, PersonId by);

    /** Lets the cell's return to service go ahead, as far as this incident goes. */
    IncidentOutcome approveRestart(IncidentId id, String words, PersonId by);

    /** What is missing before it can be closed by the person; empty when nothing is. */
    List<String> missing(Incident incident, PersonId by);

    /** Closes it. */
    IncidentOutcome close(IncidentId id, Closing closing, PersonId by);

    /** A class, and how bad it was and could reasonably have been. */
    record Classification(IncidentClass kind, Severity actual, Severity foreseeable, String because) {}

    /** A cause to add. */
    record NewCause(CauseBranch branch, @Nullable UUID parent, String words) {}

    /** An action to agree on. */
    record NewAction(String words, ControlLevel level, PersonId owner, LocalDate dueOn) {}

    /**
     * The end of a review.
     *
     * @param words what was learned; the reporter reads it
     * @param whyOnlyWeak why a class of 3 or above closes on rules and equipment alone; empty when it does not
     */
    record Closing(String words, String whyOnlyWeak) {}
}
