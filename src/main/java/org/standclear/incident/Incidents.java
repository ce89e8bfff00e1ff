package org.standclear.incident;

import java.time.Instant;
import java.util.List;
import java.util.Optional;
import org.jspecify.annotations.Nullable;
import org.standclear.platform.ids.CellId;
import org.standclear.platform.ids.IncidentId;
import org.standclear.platform.ids.PersonId;
import org.standclear.platform.ids.RunId;

/** Finds incidents and what became of them. */
public interface Incidents {

    /** The incident of that id. */
    Optional<Incident> find(IncidentId id);

    /** The incident that was reported without a name and answered with this receipt. */
    Optional<Incident> byReceipt(String receipt);

    /** Everything that was reported of the run, first to last. */
    List<Incident> ofRun(RunId run);

    /** A part of the list, latest report first. */
    Page page(Filter filter, @Nullable Position after, int size);

    /** What happened to it, first to last. */
    List<IncidentStep> steps(IncidentId id);

    /** Every state that its form and classification had, first to last. */
    List<FilledForm> forms(IncidentId id);

    /** What people said about it in their own words, first to last. */
    List<Statement> statements(IncidentId id);

    /** Its causes, struck ones too, first to last. */
    List<Cause> causes(IncidentId id);

    /** Reviews of the cell's risk assessment because of it, first to last. */
    List<RiskReview> riskReviews(IncidentId id);

    /** That the cell may run again as far as this incident goes. */
    Optional<Restart> restart(IncidentId id);

    /**
     * Which incidents to list; null means any.
     *
     * @param reporter who reported it with their name
     */
    record Filter(
            @Nullable CellId cell,
            @Nullable IncidentState state,
            @Nullable IncidentClass kind,
            @Nullable PersonId reporter) {

        /** Everything. */
        public static Filter all() {
            return new Filter(null, null, null, null);
        }
    }

    /** A place in the list. */
    record Position(Instant reportedAt, IncidentId incident) {}

    /** A part of the list, and where the next part begins; null at its end. */
    record Page(List<Incident> incidents, @Nullable Position next) {

        public Page {
            incidents = List.copyOf(incidents);
        }
    }

    /** Who let the cell start again, and on what grounds. */
    record Restart(PersonId by, Instant at, String words) {}
}
