package org.standclear.incident;

import java.util.List;
import java.util.Optional;
import java.util.UUID;
import org.jspecify.annotations.Nullable;
import org.standclear.platform.ids.IncidentId;
import org.standclear.platform.ids.PersonId;

/** Corrective actions: who does what by when, and whether it helped. */
public interface CorrectiveActions {

    /** The actions of an incident, first to last. */
    List<CorrectiveAction> of(IncidentId incident);

    /** Actions that are not done or not looked at again, the earliest date first; of one owner when one is given. */
    List<CorrectiveAction> unsettled(@Nullable PersonId owner);

    /** The action of that id. */
    Optional<CorrectiveAction> find(UUID id);

    /** Its owner, or an instructor, says what was done. */
    IncidentOutcome done(UUID action, String words, PersonId by);

    /** Somebody other than the owner looked whether it helped; when it did not, the incident is open again. */
    IncidentOutcome check(UUID action, boolean effective, String words, PersonId by);
}
