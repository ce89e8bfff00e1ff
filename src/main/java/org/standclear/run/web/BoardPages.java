package org.standclear.run.web;

import jakarta.servlet.http.HttpServletResponse;
import java.util.Map;
import java.util.Optional;
import java.util.concurrent.atomic.AtomicReference;
import org.jspecify.annotations.Nullable;
import org.springframework.http.HttpStatus;
import org.springframework.security.core.annotation.AuthenticationPrincipal;
import org.springframework.stereotype.Controller;
import org.springframework.ui.Model;
import org.springframework.web.bind.annotation.GetMapping;
import org.springframework.web.bind.annotation.PathVariable;
import org.springframework.web.bind.annotation.PostMapping;
import org.springframework.web.bind.annotation.RequestParam;
import org.springframework.web.servlet.mvc.support.RedirectAttributes;
import org.standclear.booking.Booking;
import org.standclear.booking.BookingState;
import org.standclear.booking.Bookings;
import org.standclear.booking.Bookings.Transition;
import org.standclear.people.People;
import org.standclear.platform.forms.PostOnce;
import org.standclear.platform.ids.BookingId;
import org.standclear.platform.security.SignedInPerson;
import org.standclear.platform.web.NotFoundException;
import org.standclear.signoff.Handovers;
import org.standclear.signoff.Turn;

/** The board of slots that need an e-stop attendant: authorised people take a turn, and give it back. */
@Controller
class BoardPages {

    private static final String ADDRESS = "/attendants";

    private final BoardViews views;
    private final Bookings bookings;
    private final Handovers handovers;
    private final People people;
    private final PostOnce once;

    BoardPages(BoardViews views, Bookings bookings, Handovers handovers, People people, PostOnce once) {
        this.views = views;
        this.bookings = bookings;
        this.handovers = handovers;
        this.people = people;
        this.once = once;
    }

    @GetMapping(ADDRESS)
    String show(@AuthenticationPrincipal SignedInPerson me, Model model) {
        return page(me, Map.of(), model);
    }

    @PostMapping("/attendants/{booking}/take")
    String take(
            @PathVariable BookingId booking,
            @RequestParam(required = false) @Nullable String formToken,
            @AuthenticationPrincipal SignedInPerson me,
            RedirectAttributes flash,
            HttpServletResponse response,
            Model model) {
        if (bookings.find(booking).isEmpty()) {
            throw new NotFoundException("booking");
        }
        AtomicReference<String> told = new AtomicReference<>("");
        Optional<String> next = once.run(formToken, () -> {
            String refusal = taken(booking, me);
            told.set(refusal);
            return refusal.isEmpty() ? ADDRESS : null;
        });
        if (next.isPresent()) {
            flash.addFlashAttribute("told", "The e-stop is yours for this slot. Be there when it begins, and sign.");
            return "redirect:" + next.get();
        }
        response.setStatus(HttpStatus.UNPROCESSABLE_CONTENT.value());
        return page(me, Map.of("", String.valueOf(told.get())), model);
    }

    /** Why not; empty when it is done. */
    private String taken(BookingId id, SignedInPerson me) {
        Booking booking = bookings.lock(id);
        if (booking.state() == BookingState.RUNNING) {
            if (handovers.turn(id).filter(Turn::over).isEmpty()) {
                return "The turn at that e-stop is not over. Who stands there, or lab staff, asks for somebody else.";
            }
            return handovers.ask(id, me.id(), me.id()) instanceof Handovers.Asked.Refused refused ? refused.says() : "";
        }
        if (booking.attendant() != null) {
            return people.printedName(booking.attendant()) + " has taken this turn meanwhile.";
        }
        return bookings.nameAttendant(id, me.id(), me.id()) instanceof Transition.Refused refused ? refused.says() : "";
    }

    private String page(SignedInPerson me, Map<String, String> errors, Model model) {
        BoardViews.Board board = views.of(me);
        model.addAttribute("board", board);
        model.addAttribute("errors", errors);
        return "run/attendants";
    }
}
