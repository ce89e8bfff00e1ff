package org.standclear.retention;

import java.util.List;
import java.util.Optional;
import java.util.UUID;
import org.standclear.platform.ids.PersonId;
import org.standclear.platform.retention.Concern.About;

/** Places and lifts legal holds; callers have checked that the person may. */
public interface LegalHolds {

    /** Those that stand first, then those that were lifted; latest first in both. */
    List<LegalHold> all(int atMost);

    /** One hold. */
    Optional<LegalHold> find(UUID id);

    /** Those that stand on a person, a run or an incident, latest first. */
    List<LegalHold> standingOn(About about, UUID id);

    /** Places a hold; says which. */
    UUID place(LegalHold.Target target, String reason, String authority, PersonId by);

    /** Why the person may not lift the hold: they placed it, or it is about them; empty when nothing speaks against it. */
    Optional<String> whyNotLift(LegalHold hold, PersonId by);

    /** Lifts a hold; says why not, or nothing. Never by who placed it or has a part in what is held. */
    Optional<String> lift(UUID id, String reason, PersonId by);
}
