package org.standclear.booking.allocation;

import java.time.Clock;
import java.time.LocalDate;
import java.time.temporal.ChronoUnit;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import java.util.UUID;
import org.springframework.stereotype.Service;
import org.springframework.transaction.annotation.Transactional;
import org.standclear.booking.BookTogether;
import org.standclear.booking.Booking;
import org.standclear.booking.BookingDesk;
import org.standclear.booking.Bookings;
import org.standclear.booking.MakeBooking;
import org.standclear.booking.SlotCalendar;
import org.standclear.booking.Turns;
import org.standclear.people.People;
import org.standclear.platform.ids.BookingId;
import org.standclear.platform.ids.PersonId;
import org.standclear.platform.time.LabTime;

/** Accepts a plan as a whole and takes an accepted one back as a whole. */
@Service
public class PlanDesk {

    private final Windows windows;
    private final Searches searches;
    private final Plans plans;
    private final WindowProblem problems;
    private final StillAsked stillAsked;
    private final BookTogether together;
    private final Turns makeUps;
    private final BookingDesk desk;
    private final SlotCalendar calendar;
    private final Bookings bookings;
    private final WindowLetters letters;
    private final People people;
    private final LabTime labTime;
    private final Clock clock;

    PlanDesk(
            Windows windows,
            Searches searches,
            Plans plans,
            WindowProblem problems,
            StillAsked stillAsked,
            BookTogether together,
            Turns makeUps,
            BookingDesk desk,
            SlotCalendar calendar,
            Bookings bookings,
            WindowLetters letters,
            People people,
            LabTime labTime,
            Clock clock) {
        this.windows = windows;
        this.searches = searches;
        this.plans = plans;
        this.problems = problems;
        this.stillAsked = stillAsked;
        this.together = together;
        this.makeUps = makeUps;
        this.desk = desk;
        this.calendar = calendar;
        this.bookings = bookings;
        this.letters = letters;
        this.people = people;
        this.labTime = labTime;
        this.clock = clock;
    }

    /**
     * Books every place of the plan, or says why not; then the caller rolls back. Lab staff only.
     */
    @Transactional
    public Optional<String> accept(UUID searchId, PersonId by) {
        Search search = searches.find(searchId).orElseThrow();
        Window window = windows.lockForStaff(search.window(), by);
        Optional<String> decided = decided(search, window);
        if (decided.isPresent()) {
            return decided;
        }
        List<PlannedTurn> turns = plans.places(searchId);
        if (!clock.instant().isBefore(problems.span(window).from())) {
            return Optional.of("The window began on " + labTime.day(window.firstDay())
                    + ", and a plan is accepted only before that. Open a new window for days ahead.");
        }
        Optional<String> changed = tooFarAhead(turns).or(() -> stillAsked.whyNot(window, turns));
        if (changed.isPresent()) {
            return changed;
        }
        BookTogether.Outcome outcome = together.book(turns.stream()
                .map(turn -> new MakeBooking(
                        turn.cell(), turn.start(), turn.operator(), turn.attendant(), null, turn.assignment(), by))
                .toList());
        if (outcome instanceof BookTogether.Outcome.Refused refused) {
            return Optional.of(
                    "Nothing was booked, since the plan does not fit any more: " + refused.says() + " Search again.");
        }
        List<Booking> booked = ((BookTogether.Outcome.Booked) outcome).bookings();
        keep(searchId, turns, booked);
        windows.accept(window.id(), searchId, by);
        letters.accepted(window, new Window.Accepted(searchId, by, clock.instant()));
        windows.tell(
                "booking.plan-accepted",
                window.id(),
                by,
                "The plan for \"" + window.title() + "\" was accepted: " + turns.size() + " bookings.");
        return Optional.empty();
    }

    /** Slots are booked no farther ahead than the lab's rules say; searching again would not help. */
    private Optional<String> tooFarAhead(List<PlannedTurn> turns) {
        LocalDate farthest = calendar.lastDay();
        return turns.stream()
                .map(turn -> labTime.date(turn.start()))
                .max(Comparator.naturalOrder())
                .filter(last -> last.isAfter(farthest))
                .map(last -> "Nothing was booked: slots can be booked until " + labTime.day(farthest)
                        + " now, and the last turn of this plan is on " + labTime.day(last)
                        + ". It can be accepted from "
                        + labTime.day(labTime.today().plusDays(ChronoUnit.DAYS.between(farthest, last))) + " on.");
    }

    /** Why no plan of this search can be accepted now, whatever the plan is. */
    private Optional<String> decided(Search search, Window window) {
        Window.Accepted accepted = window.accepted();
        if (accepted != null) {
            return Optional.of(
                    (accepted.search().equals(search.id()) ? "This plan was" : "Another plan for this window was")
                            + " accepted by " + people.printedName(accepted.by()) + ", "
                            + labTime.full(accepted.at())
                            + (accepted.search().equals(search.id())
                                    ? "."
                                    : ". Nothing of this one was booked; undo the other first if this one is meant."));
        }
        if (window.closed() != null) {
            return Optional.of("The window is closed. Nothing was booked; open it again first if this plan is meant.");
        }
        if (!search.state().hasPlan()) {
            return Optional.of(
                    "This search has no plan to accept: " + search.state().words() + ".");
        }
        return Optional.empty();
    }

    /** Make-ups are used up by the first places, and come back when the plan is undone. */
    private void keep(UUID search, List<PlannedTurn> turns, List<Booking> booked) {
        for (int turn = 0; turn < turns.size(); turn++) {
            plans.booked(search, turns.get(turn), booked.get(turn).id());
            makeUps.use(booked.get(turn).id(), turns.get(turn).operator());
        }
    }

    /** Why nothing of the window can be undone now; empty when it can. */
    public Optional<String> whyNotUndo(Window window) {
        if (window.accepted() == null) {
            return Optional.of("No plan of this window is accepted.");
        }
        return clock.instant().isBefore(problems.span(window).from())
                ? Optional.empty()
                : Optional.of("The window began on " + labTime.day(window.firstDay())
                        + ", and a plan is undone only before that: move or cancel bookings one by one.");
    }

    /** Takes every booking of the accepted plan back, uncounted, until the window begins; or says why not. */
    @Transactional
    public Optional<String> undo(UUID windowId, PersonId by) {
        Window window = windows.lockForStaff(windowId, by);
        Window.Accepted accepted = window.accepted();
        Optional<String> refusal = whyNotUndo(window);
        if (refusal.isPresent() || accepted == null) {
            return refusal;
        }
        int taken = 0;
        for (PlannedTurn turn : plans.places(accepted.search())) {
            BookingId booking = turn.booking();
            if (booking != null && isAhead(bookings.find(booking).orElseThrow())) {
                if (desk.moveByStaff(booking, by, "the plan was undone")
                        instanceof Bookings.Transition.Refused refused) {
                    return Optional.of(refused.says());
                }
                taken++;
            }
        }
        windows.undo(windowId);
        letters.undone(window, accepted);
        windows.tell(
                "booking.plan-undone",
                windowId,
                by,
                "The plan for \"" + window.title() + "\" was undone: " + taken
                        + " bookings taken back, nobody counted.");
        return Optional.empty();
    }

    /** Staff may have moved one to a day before the window; what has begun there stays what it is. */
    private boolean isAhead(Booking booking) {
        return booking.state().holdsItsSlot() && booking.start().isAfter(clock.instant());
    }
}
