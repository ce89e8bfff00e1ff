package org.standclear.booking;

import java.time.Instant;
import java.time.LocalDate;
import java.util.Collection;
import java.util.List;
import java.util.Optional;
import org.standclear.platform.ids.BookingId;
import org.standclear.platform.ids.CellId;
import org.standclear.platform.ids.PersonId;
import org.standclear.platform.ids.RevisionId;

/** Finds bookings and moves them through their life. Every move is refused with the current state when it does not fit. */
public interface Bookings {

    /** The booking of that id. */
    Optional<Booking> find(BookingId id);

    /** The bookings of those ids, latest start first; ids that no booking has are left out. */
    List<Booking> all(Collection<BookingId> ids);

    /** Reads the booking and locks its row until the transaction ends, for a gate and the act it gates. */
    Booking lock(BookingId id);

    /** The same without waiting: empty when somebody else has locked the booking just now, or it is another lab's. */
    Optional<Booking> lockUnlessLocked(BookingId id);

    /** Bookings on a cell that touch the lab's day and still hold their slot, or held it to the end; by start. */
    List<Booking> onDay(CellId cell, LocalDate day);

    /**
     * Bookings in which the person is operator or attendant, whose slot ends after the instant and which still hold it;
     * by start.
     */
    List<Booking> of(PersonId person, Instant endingAfter);

    /** Bookings of the person whose run goes on or stands stopped, however long ago their slot was; by start. */
    List<Booking> inRun(PersonId person);

    /** The latest bookings of the person that are over or given up, whatever came of them; latest first. */
    List<Booking> recordOf(PersonId person, int atMost);

    /** Bookings on the cell that started running and were not closed out, other than the one named; by start. */
    List<Booking> awaitingCloseOut(CellId cell, BookingId otherThan);

    /** The booking whose slot covers the instant, or else the next one of that day that holds its slot. */
    Optional<Booking> currentOrNext(CellId cell, Instant at);

    /** Names the program; allowed before the release. Goes back to {@code booked} until checked anew. */
    Transition attachRevision(BookingId id, RevisionId revision, PersonId by);

    /** Replaces the attendant, claims included; allowed until the start and while stopped. A release lapses by it. */
    Transition nameAttendant(BookingId id, PersonId attendant, PersonId by);

    /** Another attendant has signed for the e-stop of the run that goes on; claims included. */
    Transition handOver(BookingId id, PersonId attendant, PersonId by);

    /** The attendant leaves, and the e-stop is open until somebody is named; allowed while nothing moves. */
    Transition askForAttendant(BookingId id, PersonId by);

    /** booked to checked: the program's answer is within limits on the cell's current version. */
    Transition markChecked(BookingId id, PersonId by);

    /** Back to booked, from checked, ready or released: the check or the session no longer holds. */
    Transition backToBooked(BookingId id, String reason);

    /** The operator, or staff for the operator, says that the operator is at the cell. */
    Transition checkIn(BookingId id, PersonId by);

    /** checked to ready: the session list is signed by operator and attendant; signing it there is checking in. */
    Transition markReady(BookingId id, PersonId by);

    /** ready to released. */
    Transition markReleased(BookingId id, PersonId by);

    /** released to ready: the release lapsed before the start, the session still holds. */
    Transition backToReady(BookingId id, String reason);

    /** released to running. */
    Transition markRunning(BookingId id, PersonId by);

    /** running to stopped: an e-stop press or a protective stop. */
    Transition markStopped(BookingId id, PersonId by, String reason);

    /** stopped to ready: the stop was reset with its cause known; a short list may release again. */
    Transition readyAfterStop(BookingId id, PersonId by);

    /** stopped to checked: the stop was reset, but the session list has to be signed anew by a new attendant. */
    Transition checkedAfterStop(BookingId id, PersonId by);

    /** running or stopped to finished; also from ready, checked or booked when it ran before it was stopped. */
    Transition markFinished(BookingId id, PersonId by);

    /** finished to closed out. */
    Transition markClosedOut(BookingId id, PersonId by);

    /** What came of asking for a move. */
    sealed interface Transition {

        /** It moved; the booking as it is now. */
        record Moved(Booking booking) implements Transition {}

        /** It did not fit; the words name the current state and what would have to come first. */
        record Refused(BookingState current, String says) implements Transition {}
    }
}
