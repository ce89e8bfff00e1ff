package org.standclear.incident;

import java.time.Instant;
import java.time.LocalDate;
import java.util.UUID;
import org.jspecify.annotations.Nullable;
import org.standclear.platform.ids.IncidentId;
import org.standclear.platform.ids.PersonId;

/**
 * Something that is done so that it does not happen again.
 *
 * @param done null while it is open
 * @param checked null until somebody looked whether it helped
 */
public record CorrectiveAction(
        UUID id,
        IncidentId incident,
        String words,
        ControlLevel level,
        PersonId owner,
        LocalDate dueOn,
        PersonId addedBy,
        Instant addedAt,
        @Nullable Done done,
        @Nullable Checked checked) {

    /** Whether it is past its date. */
    public boolean isOverdue(LocalDate today) {
        return done == null ? today.isAfter(dueOn) : checked == null && today.isAfter(done.checkDueOn());
    }

    /** The day by which something is to be done on it: the work, or the second look. */
    public LocalDate nextDate() {
        return done == null ? dueOn : done.checkDueOn();
    }

    /** Whether anything is left to do on it. */
    public boolean isSettled() {
        return done != null && checked != null;
    }

    /** That it was done. */
    public record Done(PersonId by, Instant at, String words, LocalDate checkDueOn) {}

    /** That somebody other than its owner looked whether it helped. */
    public record Checked(PersonId by, Instant at, boolean effective, String words) {}
}
