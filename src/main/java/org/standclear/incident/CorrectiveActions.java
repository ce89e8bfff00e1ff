package org.standclear.incident;

import java.time.LocalDate;
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

    /** A part of the actions that are not done or not looked at again, the earliest date first. */
    Page unsettled(Whose whose, @Nullable Position after, int size);

    /** How many of them there are. */
    Counted counted(PersonId owner);

    /** The action of that id. */
    Optional<CorrectiveAction> find(UUID id);

    /** Its owner, or an instructor, says what was done. */
    IncidentOutcome done(UUID action, String words, PersonId by);

    /** Somebody other than the owner looked whether it helped; when it did not, the incident is open again. */
    IncidentOutcome check(UUID action, boolean effective, String words, PersonId by);

    /** Whose actions are meant. */
    sealed interface Whose {

        /** Everybody's. */
        record Everybody() implements Whose {}

        /** One person's. */
        record Of(PersonId owner) implements Whose {}

        /** Everybody's but this person's. */
        record Others(PersonId than) implements Whose {}
    }

    /** A place in the list. */
    record Position(LocalDate on, UUID action) {}

    /** A part of the list, and where the next part begins; null at its end. */
    record Page(List<CorrectiveAction> actions, @Nullable Position next) {

        public Page {
            actions = List.copyOf(actions);
        }
    }

    /**
     * How many are not settled.
     *
     * @param toDo of the owner's, not done yet
     * @param overdue of everybody's, past their date
     */
    record Counted(int toDo, int overdue) {}
}
