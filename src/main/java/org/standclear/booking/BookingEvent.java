package org.standclear.booking;

import static org.standclear.booking.BookingState.*;

import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.stream.Collectors;

/** What can happen to a booking, and in which states; everything that is not listed here is refused. */
enum BookingEvent {
    NAME_PROGRAM("be given a program", Map.of(BOOKED, BOOKED, CHECKED, BOOKED, READY, BOOKED)),
    // a new attendant has signed nothing yet, so the session list is open again
    NAME_ATTENDANT(
            "be given another attendant",
            // a release waits for its start no longer: whoever looks or starts next finds that it has lapsed
            Map.of(BOOKED, BOOKED, CHECKED, CHECKED, READY, CHECKED, RELEASED, RELEASED, STOPPED, STOPPED)),
    HAND_OVER("change hands at the e-stop", Map.of(RUNNING, RUNNING)),
    // people do go away: the run then waits for somebody else
    ASK_FOR_ATTENDANT(
            "go without an attendant",
            Map.of(BOOKED, BOOKED, CHECKED, CHECKED, READY, CHECKED, RELEASED, RELEASED, STOPPED, STOPPED)),
    CHECK("become checked", Map.of(BOOKED, CHECKED)),
    GO_BACK_TO_BOOKED("go back to booked", Map.of(CHECKED, BOOKED, READY, BOOKED, RELEASED, BOOKED)),
    CHECK_IN("be checked in", Map.of(BOOKED, BOOKED, CHECKED, CHECKED)),
    BECOME_READY("become ready", Map.of(CHECKED, READY)),
    RELEASE("be released", Map.of(READY, RELEASED)),
    GO_BACK_TO_READY("go back to ready", Map.of(RELEASED, READY)),
    START("start running", Map.of(RELEASED, RUNNING)),
    STOP("be stopped", Map.of(RUNNING, STOPPED)),
    RESET("become ready after a stop", Map.of(STOPPED, READY)),
    // who came to the e-stop while it was stopped has signed nothing yet
    RESET_ANEW("go back to its session list after a stop", Map.of(STOPPED, CHECKED)),
    FINISH("be finished", Map.of(RUNNING, FINISHED, STOPPED, FINISHED)),
    CLOSE_OUT("be closed out", Map.of(FINISHED, CLOSED_OUT)),
    CANCEL("be cancelled", Map.of(BOOKED, CANCELLED, CHECKED, CANCELLED, READY, CANCELLED)),
    CANCEL_LATE("be cancelled", Map.of(BOOKED, LATE_CANCELLED, CHECKED, LATE_CANCELLED, READY, LATE_CANCELLED)),
    MISS("be missed", Map.of(BOOKED, MISSED, CHECKED, MISSED)),
    MOVE("be moved by staff", Map.of(BOOKED, MOVED_BY_STAFF, CHECKED, MOVED_BY_STAFF, READY, MOVED_BY_STAFF));

    private final String canNot;
    private final Map<BookingState, BookingState> moves;

    BookingEvent(String canNot, Map<BookingState, BookingState> moves) {
        this.canNot = canNot;
        this.moves = new EnumMap<>(moves);
    }

    /** The state after it; empty when it does not fit the state before. */
    Optional<BookingState> from(BookingState state) {
        return Optional.ofNullable(moves.get(state));
    }

    /** Why it does not fit: the state as it is, and the states in which it would. */
    String refusal(BookingState current) {
        List<String> fitting =
                moves.keySet().stream().sorted().map(BookingState::words).toList();
        return "The booking is " + current.words() + " and cannot " + canNot + "; that is possible while it is "
                + fitting.stream().collect(Collectors.joining(" or ")) + ".";
    }
}
