package org.standclear.booking.web;

import jakarta.servlet.http.HttpServletResponse;
import java.time.Instant;
import java.util.Optional;
import org.jspecify.annotations.Nullable;
import org.springframework.http.HttpStatus;
import org.springframework.security.core.annotation.AuthenticationPrincipal;
import org.springframework.stereotype.Controller;
import org.springframework.ui.Model;
import org.springframework.web.bind.annotation.GetMapping;
import org.springframework.web.bind.annotation.PathVariable;
import org.springframework.web.bind.annotation.PostMapping;
import org.springframework.web.bind.annotation.RequestParam;
import org.standclear.booking.Booking;
import org.standclear.booking.Confirmations;
import org.standclear.platform.ids.BookingId;
import org.standclear.platform.security.SignedInPerson;
import org.standclear.platform.time.LabTime;

/** "I am coming": one button, where reminders lead to; opening the page alone says nothing yet. */
@Controller
class ComingPages {

    private final OwnBookings own;
    private final Confirmations confirmations;
    private final PatientPost patientPost;
    private final LabTime labTime;

    ComingPages(OwnBookings own, Confirmations confirmations, PatientPost patientPost, LabTime labTime) {
        this.own = own;
        this.confirmations = confirmations;
        this.patientPost = patientPost;
        this.labTime = labTime;
    }

    @GetMapping("/bookings/{booking}/coming")
    String ask(@PathVariable BookingId booking, @AuthenticationPrincipal SignedInPerson me, Model model) {
        return page(own.toActOn(booking, me), false, model);
    }

    @PostMapping("/bookings/{booking}/coming")
    String say(
            @PathVariable BookingId booking,
            @RequestParam(required = false) @Nullable String formToken,
            @AuthenticationPrincipal SignedInPerson me,
            HttpServletResponse response,
            Model model) {
        Booking found = own.toActOn(booking, me);
        Optional<String> done = patientPost.run(
                formToken, () -> confirmations.confirm(booking, me.id()) ? "/bookings/" + booking : null);
        if (done.isPresent()) {
            return "redirect:" + done.get();
        }
        response.setStatus(HttpStatus.UNPROCESSABLE_CONTENT.value());
        return page(found, true, model);
    }

    private String page(Booking booking, boolean refused, Model model) {
        Optional<Instant> said = confirmations.confirmedAt(booking.id());
        Optional<Instant> asked = confirmations.askedUntil(booking.id());
        model.addAttribute("booking", booking);
        model.addAttribute("what", own.title(booking));
        model.addAttribute("open", asked.isPresent());
        model.addAttribute("headline", headline(booking, said, asked, refused));
        model.addAttribute(
                "text",
                asked.map(
                                until -> "Say so by " + labTime.full(until)
                                        + ", or name your program. Otherwise the slot is given to the next; nothing is counted.")
                        .orElse(""));
        return "booking/coming";
    }

    private String headline(Booking booking, Optional<Instant> said, Optional<Instant> asked, boolean refused) {
        if (said.isPresent()) {
            return "You said on " + labTime.full(said.get()) + " that you come";
        }
        if (asked.isPresent()) {
            return "Are you coming?";
        }
        return (refused ? "Not changed: the" : "The") + " booking is "
                + booking.state().words() + ", and nobody asks whether you come";
    }
}
