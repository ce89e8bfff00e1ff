package org.standclear.people;

import java.util.List;
import java.util.Optional;
import java.util.UUID;
import org.jspecify.annotations.Nullable;
import org.standclear.platform.ids.AssignmentId;
import org.standclear.platform.ids.PersonId;

/** What runs of an assignment are to show, in a few words each; points where the instructor wants them. */
public interface Criteria {

    /** The most that an assignment can have: a short list. */
    int MOST = 12;

    /** Those in use, in their order. */
    List<Criterion> of(AssignmentId assignment);

    /** The criterion of that id, in use or not. */
    Optional<Criterion> find(UUID id);

    /** Adds one at the end; says which field is wrong and why, or nothing. The caller has checked that the person may. */
    Optional<Wrong> add(AssignmentId assignment, String words, @Nullable Integer points, PersonId by);

    /** It is not used any more, and stays where runs are linked to it; false when somebody said so already. */
    boolean retire(UUID id, PersonId by);

    /** What is wrong with which field. */
    record Wrong(String field, String says) {}

    /**
     * One criterion.
     *
     * @param points null for none
     */
    record Criterion(
            UUID id,
            AssignmentId assignment,
            int place,
            String words,
            @Nullable Integer points,
            boolean inUse) {

        /** "The plate lies flat (4 points)". */
        public String line() {
            return points == null ? words : words + (points == 1 ? " (1 point)" : " (" + points + " points)");
        }
    }
}
