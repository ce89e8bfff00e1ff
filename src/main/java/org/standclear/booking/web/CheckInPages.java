package org.standclear.booking.web;

import jakarta.servlet.http.HttpServletResponse;
import java.util.Optional;
import java.util.concurrent.atomic.AtomicReference;
import org.jspecify.annotations.Nullable;
import org.springframework.http.HttpStatus;
import org.springframework.security.core.annotation.AuthenticationPrincipal;
import org.springframework.stereotype.Controller;
import org.springframework.ui.Model;
import org.springframework.web.bind.annotation.PathVariable;
import org.springframework.web.bind.annotation.PostMapping;
import org.springframework.web.bind.annotation.RequestParam;
import org.standclear.booking.Booking;
import org.standclear.booking.Bookings;
import org.standclear.booking.Bookings.Transition;
import org.standclear.platform.ids.BookingId;
import org.standclear.platform.security.SignedInPerson;

/** The operator, or staff for the operator, says that the operator is at the cell. */
@Controller
class CheckInPages {

    private final OwnBookings own;
    private final Bookings bookings;
    private final PatientPost patientPost;

    CheckInPages(OwnBookings own, Bookings bookings, PatientPost patientPost) {
        this.own = own;
        this.bookings = bookings;
        this.patientPost = patientPost;
    }

    @PostMapping("/bookings/{booking}/check-in")
    String checkIn(
            @PathVariable BookingId booking,
            @RequestParam(required = false) @Nullable String formToken,
            @AuthenticationPrincipal SignedInPerson me,
            HttpServletResponse response,
            Model model) {
        Booking before = own.toActOn(booking, me);
        AtomicReference<@Nullable String> refusal = new AtomicReference<>();
        Optional<String> done = patientPost.run(formToken, () -> {
            if (bookings.checkIn(booking, me.id()) instanceof Transition.Refused refused) {
                refusal.set(refused.says());
                return null;
            }
            return "/bookings/" + booking;
        });
        if (done.isPresent()) {
            return "redirect:" + done.get();
        }
        response.setStatus(HttpStatus.UNPROCESSABLE_CONTENT.value());
        model.addAttribute("booking", before);
        model.addAttribute("what", own.title(before));
        model.addAttribute("refusal", refusal.get());
        return "booking/not-checked-in";
    }
}
