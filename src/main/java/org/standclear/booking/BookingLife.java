package org.standclear.booking;

import java.time.Instant;
import java.util.Optional;
import org.jspecify.annotations.Nullable;
import org.standclear.platform.ids.AssignmentId;
import org.standclear.platform.ids.BookingId;
import org.standclear.platform.ids.CellId;
import org.standclear.platform.ids.CourseId;
import org.standclear.platform.ids.PersonId;
import org.standclear.platform.ids.RevisionId;

/** One booking through its life. Each event says in words why it does not fit, or changes the booking and says nothing. */
final class BookingLife {

    private final Entry entry;
    private BookingState state;
    private @Nullable PersonId attendant;
    private @Nullable RevisionId revision;
    private @Nullable Instant checkedInAt;
    private @Nullable Instant startedAt;
    private int version;

    /** What never changes: the slot, the operator, what it is for. */
    record Entry(
            BookingId id,
            CellId cell,
            Instant start,
            Instant end,
            PersonId operator,
            @Nullable CourseId course,
            @Nullable AssignmentId assignment,
            boolean outsideQuota) {}

    /** What changes, as it was stored. */
    record Stored(
            BookingState state,
            @Nullable PersonId attendant,
            @Nullable RevisionId revision,
            @Nullable Instant checkedInAt,
            @Nullable Instant startedAt,
            int version) {}

    BookingLife(Entry entry, Stored stored) {
        this.entry = entry;
        this.state = stored.state();
        this.attendant = stored.attendant();
        this.revision = stored.revision();
        this.checkedInAt = stored.checkedInAt();
        this.startedAt = stored.startedAt();
        this.version = stored.version();
    }

    static BookingLife begun(Entry entry, @Nullable PersonId attendant) {
        BookingLife life = new BookingLife(entry, new Stored(BookingState.BOOKED, null, null, null, null, 1));
        life.attendant = life.notTheOperator(attendant);
        return life;
    }

    Booking booking() {
        return bookingIn(state);
    }

    /** As it counts at the instant: missed when that is due, though nobody may have written it down yet. */
    Booking bookingAsOf(Instant now, BookingSettings settings) {
        return bookingIn(isDueMissed(now, settings) ? BookingState.MISSED : state);
    }

    private Booking bookingIn(BookingState shown) {
        return new Booking(
                entry.id(),
                entry.cell(),
                entry.start(),
                entry.end(),
                entry.operator(),
                attendant,
                entry.course(),
                entry.assignment(),
                revision,
                shown,
                checkedInAt,
                version);
    }

    Entry entry() {
        return entry;
    }

    Stored stored() {
        return new Stored(state, attendant, revision, checkedInAt, startedAt, version);
    }

    /** Whether nobody checked in and the grace time is over: then it is missed, whether or not that was written down. */
    boolean isDueMissed(Instant now, BookingSettings settings) {
        return BookingEvent.MISS.from(state).isPresent()
                && checkedInAt == null
                && !now.isBefore(entry.start().plus(settings.grace()));
    }

    /** An event without a condition beyond the state. */
    Optional<String> take(BookingEvent event) {
        Optional<BookingState> next = event.from(state);
        if (next.isEmpty()) {
            return Optional.of(event.refusal(state));
        }
        state = next.get();
        version++;
        return Optional.empty();
    }

    Optional<String> nameProgram(RevisionId named) {
        Optional<String> refusal = take(BookingEvent.NAME_PROGRAM);
        if (refusal.isEmpty()) {
            revision = named;
        }
        return refusal;
    }

    Optional<String> nameAttendant(PersonId named) {
        notTheOperator(named);
        Optional<String> refusal = take(BookingEvent.NAME_ATTENDANT);
        if (refusal.isEmpty()) {
            attendant = named;
        }
        return refusal;
    }

    /** Another attendant has signed for the e-stop of the run that goes on. */
    Optional<String> handOver(PersonId named) {
        notTheOperator(named);
        Optional<String> refusal = take(BookingEvent.HAND_OVER);
        if (refusal.isEmpty()) {
            attendant = named;
        }
        return refusal;
    }

    Optional<String> askForAttendant() {
        Optional<String> refusal = take(BookingEvent.ASK_FOR_ATTENDANT);
        if (refusal.isEmpty()) {
            attendant = null;
        }
        return refusal;
    }

    Optional<String> check() {
        if (revision == null && state == BookingState.BOOKED) {
            return Optional.of("The booking is booked without a program: name the program first.");
        }
        return take(BookingEvent.CHECK);
    }

    /** At the cell, not before check-in opens and not after the grace time. */
    Optional<String> checkIn(Instant now, BookingSettings settings) {
        if (checkedInAt != null && state.holdsItsSlot()) {
            return Optional.of("The booking is " + state.words() + " and checked in already.");
        }
        if (now.isBefore(entry.start().minus(settings.checkInOpens()))) {
            return Optional.of("The booking is " + state.words() + "; check-in opens " + settings.checkInOpensMinutes()
                    + " min before the start.");
        }
        Optional<String> refusal = take(BookingEvent.CHECK_IN);
        if (refusal.isEmpty()) {
            checkedInAt = now;
        }
        return refusal;
    }

    /** Operator and attendant have signed the session list at the bench; who signs there is there. */
    Optional<String> becomeReady(Instant now) {
        if (attendant == null && state == BookingState.CHECKED) {
            return Optional.of("The booking is checked without an e-stop attendant: name the attendant first.");
        }
        Optional<String> refusal = take(BookingEvent.BECOME_READY);
        if (refusal.isEmpty() && checkedInAt == null) {
            checkedInAt = now;
        }
        return refusal;
    }

    Optional<String> start(Instant now) {
        Optional<String> refusal = take(BookingEvent.START);
        if (refusal.isEmpty() && startedAt == null) {
            startedAt = now;
        }
        return refusal;
    }

    /** Also when the run was stopped and not released again: the arm has moved, so it ends with a close-out. */
    Optional<String> finish() {
        if (hasRunAndWaits()) {
            state = BookingState.FINISHED;
            version++;
            return Optional.empty();
        }
        return take(BookingEvent.FINISH);
    }

    Optional<String> cancel(Instant now, BookingSettings settings) {
        boolean late = now.isAfter(entry.start().minusSeconds(settings.lateCancelMinutes() * 60L));
        return giveUp(late ? BookingEvent.CANCEL_LATE : BookingEvent.CANCEL);
    }

    /** Cancelled, or moved by staff: neither is possible once the arm has moved. */
    Optional<String> giveUp(BookingEvent event) {
        if (hasRunAndWaits()) {
            return Optional.of("The booking is " + state.words()
                    + " and has run already: its run is finished and closed out, not given up.");
        }
        return take(event);
    }

    private boolean hasRunAndWaits() {
        return startedAt != null
                && (state == BookingState.BOOKED || state == BookingState.CHECKED || state == BookingState.READY);
    }

    private @Nullable PersonId notTheOperator(@Nullable PersonId named) {
        if (entry.operator().equals(named)) {
            throw new IllegalArgumentException("the operator never attends the own run");
        }
        return named;
    }
}
