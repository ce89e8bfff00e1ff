package org.standclear.incident;

import java.time.Instant;
import java.time.LocalDate;
import org.jspecify.annotations.Nullable;
import org.standclear.platform.ids.PersonId;

/**
 * That the cell's risk assessment was reviewed because of an incident.
 *
 * @param cellVersion the version that came out of it; null when the cell stays as it is
 */
public record RiskReview(
        LocalDate reviewedOn, String outcome, @Nullable Integer cellVersion, PersonId notedBy, Instant notedAt) {}
