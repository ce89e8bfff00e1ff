package org.standclear.retention;

import java.time.Instant;
import java.util.List;
import java.util.Optional;
import java.util.UUID;
import org.jspecify.annotations.Nullable;
import org.standclear.platform.ids.PersonId;
import org.standclear.platform.retention.RecordKind;

/** Shorter times of keeping: one person proposes, a second one puts it in force; callers have checked who may at all. */
public interface Shortenings {

    /** Those that nobody has decided on, earliest first. */
    List<Proposal> open();

    /** One of the lab's proposals. */
    Optional<Proposal> find(UUID id);

    /**
     * Proposes a time that is shorter than the one in force.
     *
     * @param seenNumber the number of the rule that the form was filled in against
     */
    Proposed propose(RecordKind kind, KeepingTime time, int seenNumber, PersonId by, String reason);

    /** Why the person may not approve it; empty when nothing speaks against it. */
    Optional<String> whyNotApprove(Proposal proposal, PersonId by);

    /** Puts the proposed time in force; says why not, or nothing. */
    Optional<String> approve(UUID id, PersonId by);

    /** Puts the proposal aside, by whoever proposed it too; says why not, or nothing. */
    Optional<String> reject(UUID id, String reason, PersonId by);

    /**
     * A proposal.
     *
     * @param seenNumber the rule that it would follow
     * @param decided null while it is open
     */
    record Proposal(
            UUID id,
            RecordKind kind,
            int seenNumber,
            KeepingTime time,
            String reason,
            PersonId by,
            Instant at,
            @Nullable Decided decided) {

        /** Whether nobody has decided on it. */
        public boolean isOpen() {
            return decided == null;
        }
    }

    /** That somebody decided, and how. */
    record Decided(boolean approved, PersonId by, Instant at, String reason) {}

    /** What came of proposing. */
    sealed interface Proposed {

        /** It waits for a second person. */
        record Waits(UUID id) implements Proposed {}

        /** Somebody changed the rule meanwhile. */
        record Stale() implements Proposed {}

        /** It is not proposed, in words. */
        record Refused(String says) implements Proposed {}
    }
}
