package org.standclear.retention;

import java.util.List;
import java.util.Optional;
import java.util.UUID;
import org.jspecify.annotations.Nullable;
import org.standclear.platform.ids.PersonId;
import org.standclear.platform.retention.Concern.About;

/** Places and lifts legal holds; callers have checked that the person may. */
public interface LegalHolds {

    /** Those that stand, latest first. */
    List<LegalHold> standing(int atMost);

    /** Those that were lifted, placed latest first, after one of them when one is given. */
    List<LegalHold> lifted(@Nullable LegalHold after, int atMost);

    /** One hold of the lab. */
    Optional<LegalHold> find(UUID id);

    /** Those of the lab that stand on a person, a run or an incident, latest first; never another lab's. */
    List<LegalHold> standingOn(About about, UUID id);

    /** Places a hold; says which. */
    UUID place(LegalHold.Target target, String reason, String authority, PersonId by);

    /** Why the person may not lift the hold: they placed it, or it is about them; empty when nothing speaks against it. */
    Optional<String> whyNotLift(LegalHold hold, PersonId by);

    /** Lifts a hold; says why not, or nothing. Never by who placed it or has a part in what is held. */
    Optional<String> lift(UUID id, String reason, PersonId by);
}
