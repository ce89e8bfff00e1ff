package org.standclear.retention;

import java.time.Instant;
import java.util.List;
import org.jspecify.annotations.Nullable;
import org.standclear.platform.ids.PersonId;
import org.standclear.platform.retention.RecordKind;

/** Keeps how long records are kept, with who changed it and why. */
public interface KeepingRules {

    /** The rule in force for a kind. */
    KeepingRule inForce(RecordKind kind);

    /** The latest changes of a kind, latest first; empty while the default holds. */
    List<Change> changes(RecordKind kind, int atMost);

    /**
     * Puts a time in force that is not shorter; a shorter one takes a second person, see {@link Shortenings}. The caller has
     * checked that the person may.
     *
     * @param seenNumber the number of the rule that the form was filled in against
     * @return false when somebody changed it meanwhile, and nothing was changed
     */
    boolean change(RecordKind kind, KeepingTime time, int seenNumber, PersonId by, String reason);

    /**
     * A rule that was put in force, by whom, when and why.
     *
     * @param approvedBy who approved it, when it was a shorter time; null when nobody had to
     */
    record Change(KeepingRule rule, PersonId by, @Nullable PersonId approvedBy, Instant at, String reason) {}
}
