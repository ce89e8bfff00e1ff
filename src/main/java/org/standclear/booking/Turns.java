package org.standclear.booking;

import java.time.Instant;
import java.util.List;
import java.util.Optional;
import java.util.UUID;
import org.jspecify.annotations.Nullable;
import org.standclear.platform.ids.BookingId;
import org.standclear.platform.ids.PersonId;

/**
 * Turns that were lost, and what staff do about it: excuse them, begin a count anew, give a make-up. What a student writes is
 * for lab staff and the student; the record says that something was excused and by whom, never why.
 */
public interface Turns {

    /** Bookings missed or cancelled late in the last days, latest first. */
    List<Lost> lost(int days);

    /** The same of one person, as far back as the desk remembers. */
    List<Lost> lostBy(PersonId person);

    /** What is known of a lost booking; empty when it was not lost. */
    Optional<Lost> find(BookingId booking);

    /** The operator says why; once more replaces it. Says what is wrong with it, or nothing. */
    Optional<String> explain(BookingId booking, PersonId by, String words);

    /** No quota counts it any more; with a make-up if wanted. False when it was not lost, or was excused already. */
    boolean excuse(BookingId booking, boolean makeUp, PersonId by);

    /** It counts again; a make-up that was not used is taken back with it. */
    boolean countAgain(BookingId booking, PersonId by);

    /** What the person lost so far is not counted any more. */
    void countAnew(PersonId person, PersonId by);

    /** Gives one booking beyond the quotas. */
    void giveMakeUp(PersonId person, PersonId by);

    /** Takes a make-up back; false when it was used or taken back already. */
    boolean takeBack(UUID makeUp, PersonId by);

    /** All make-ups of a person, latest first. */
    List<MakeUp> makeUpsOf(PersonId person);

    /** When the person's count was begun anew last. */
    Optional<Instant> countedAnew(PersonId person);

    /**
     * A booking that was lost.
     *
     * @param words what the operator wrote; empty when nothing
     * @param excusedBy null while it counts
     */
    record Lost(
            Booking booking,
            String words,
            @Nullable PersonId excusedBy,
            @Nullable Instant excusedAt) {}

    /**
     * One booking beyond the quotas.
     *
     * @param usedBy the booking it went into; null while unused
     * @param stands whether it can be used now
     */
    record MakeUp(
            UUID id,
            Instant grantedAt,
            Instant validUntil,
            @Nullable BookingId usedBy,
            boolean takenBack,
            boolean stands) {}
}
