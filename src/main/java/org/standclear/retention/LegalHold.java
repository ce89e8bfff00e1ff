package org.standclear.retention;

import java.time.Instant;
import java.time.LocalDate;
import java.util.UUID;
import org.jspecify.annotations.Nullable;
import org.standclear.platform.ids.PersonId;
import org.standclear.platform.retention.Concern.About;
import org.standclear.platform.retention.RecordKind;

/**
 * Something that is kept whatever its clock says.
 *
 * @param authority who asks for it: an office, a court, a case number
 * @param lifted null while it stands
 */
public record LegalHold(
        UUID id,
        Target target,
        String reason,
        String authority,
        PersonId placedBy,
        Instant placedAt,
        @Nullable Lifted lifted) {

    /** What is held. */
    public sealed interface Target {

        /** Everything about a person, a run or an incident. */
        record One(About about, UUID id) implements Target {}

        /** Records of a kind whose clocks started between two days, both included; null for no bound. */
        record Span(
                RecordKind kind,
                @Nullable LocalDate from,
                @Nullable LocalDate until) implements Target {}
    }

    /** That a second person lifted it. */
    public record Lifted(PersonId by, Instant at, String reason) {}

    /** Whether it stands. */
    public boolean stands() {
        return lifted == null;
    }
}
