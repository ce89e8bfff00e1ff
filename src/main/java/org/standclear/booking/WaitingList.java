package org.standclear.booking;

import java.time.Instant;
import java.util.List;
import java.util.Optional;
import java.util.UUID;
import org.jspecify.annotations.Nullable;
import org.standclear.platform.ids.AssignmentId;
import org.standclear.platform.ids.CellId;
import org.standclear.platform.ids.CourseId;
import org.standclear.platform.ids.PersonId;

/**
 * Who waits for a slot, and the offers made to them. A slot that is free within somebody's time is held for that person for
 * some minutes; then the next is asked. The order: who lost a turn to the lab or has a make-up, who let no offer pass, who
 * had fewest turns in the last four weeks, who has waited longest.
 */
public interface WaitingList {

    /** Puts somebody on the list; says why not, and with which field, or nothing. */
    Joined join(JoinWait wanted);

    /** Takes a wait off the list; false when it was not there any more. */
    boolean leave(UUID wait, PersonId by);

    /** What the person waits for, soonest first. */
    List<Waiting> of(PersonId person);

    /** All who wait, in the order in which they are asked. */
    List<Waiting> all();

    /** The offer of that id, whatever became of it. */
    Optional<Offer> offer(UUID id);

    /** Books what is offered; every rule is asked once more. */
    BookingDesk.Outcome accept(UUID offer, PersonId by);

    /** Says no; the slot goes to the next. False when the offer was over already. */
    boolean decline(UUID offer, PersonId by);

    /** Ends what is over and offers what is free; says how many offers it made. Any number may do so at once. */
    int round();

    /**
     * What somebody waits for.
     *
     * @param cell null for any cell that the person may operate
     */
    record JoinWait(
            PersonId person,
            @Nullable CellId cell,
            Instant from,
            Instant until,
            @Nullable CourseId course,
            @Nullable AssignmentId assignment,
            PersonId by) {}

    /**
     * A place on the list.
     *
     * @param goesFirst because the lab took a slot away
     * @param passes offers that were let go
     * @param offer the slot held for the person now; null when none is
     */
    record Waiting(
            UUID id,
            PersonId person,
            @Nullable CellId cell,
            Instant from,
            Instant until,
            @Nullable CourseId course,
            @Nullable AssignmentId assignment,
            boolean goesFirst,
            int passes,
            Instant joinedAt,
            @Nullable Offer offer) {}

    /** A slot held for one who waits. */
    record Offer(UUID id, UUID waitId, PersonId person, Slot slot, Instant until, OfferState state) {}

    /** What came of joining. */
    sealed interface Joined {

        /** On the list, at that place of all whose times touch. */
        record On(Waiting waiting, int place) implements Joined {}

        /** Not on the list. */
        record Refused(String field, String says) implements Joined {}
    }
}
