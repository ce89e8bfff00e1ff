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

    /** The latest hundred of one person. */
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

    /** Gives one booking beyond the quotas; says what is wrong with the reason, or nothing. */
    Optional<String> giveMakeUp(PersonId person, String reason, PersonId by);

    /** Withdraws one that is not used; says why not, or nothing. */
    Optional<String> withdraw(UUID makeUp, String reason, PersonId by);

    /** Uses the operator's make-up that ends first for a booking that a plan made; false when there is none. */
    boolean use(BookingId booking, PersonId operator);

    /**
     * Gives one booking beyond the quotas for a booking whose time was taken without the person's fault; once for each
     * booking. Joins the running transaction. False when that booking is made up for already.
     */
    boolean giveMakeUpFor(BookingId lost, PersonId person, PersonId by);

    /** All make-ups of a person, latest first. */
    List<MakeUp> makeUpsOf(PersonId person);

    /**
     * Make-ups of everybody that can be used now, in the order in which they are used up, then those that were given in
     * the last days and cannot.
     */
    List<MakeUp> makeUps(int days);

    /** The make-up of that id. */
    Optional<MakeUp> makeUp(UUID id);

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
     * One booking beyond the quotas. Of several, a person uses the one first that ends first.
     *
     * @param reason why it was given; for lab staff and the person
     * @param lost the booking it makes up for; null when it was given for something else
     * @param usedBy the booking it went into; null while unused
     * @param withdrawn why it was withdrawn; null when it was not
     * @param stands whether it can be used now
     */
    record MakeUp(
            UUID id,
            PersonId person,
            PersonId grantedBy,
            Instant grantedAt,
            Instant validUntil,
            String reason,
            @Nullable BookingId lost,
            @Nullable BookingId usedBy,
            @Nullable String withdrawn,
            boolean stands) {}
}
