package org.standclear.booking.web;

import jakarta.servlet.http.HttpServletResponse;
import java.time.Clock;
import java.time.Duration;
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
import org.standclear.booking.Booking;
import org.standclear.booking.BookingDesk;
import org.standclear.booking.BookingNumbers;
import org.standclear.booking.Bookings;
import org.standclear.booking.Bookings.Transition;
import org.standclear.platform.ids.BookingId;
import org.standclear.platform.security.SignedInPerson;
import org.standclear.platform.time.LabTime;

/** Gives a slot up after a look at what that means. */
@Controller
class CancelPages {

    private final OwnBookings own;
    private final Bookings bookings;
    private final BookingDesk desk;
    private final BookingNumbers numbers;
    private final PatientPost patientPost;
    private final LabTime labTime;
    private final Clock clock;

    CancelPages(
            OwnBookings own,
            Bookings bookings,
            BookingDesk desk,
            BookingNumbers numbers,
            PatientPost patientPost,
            LabTime labTime,
            Clock clock) {
        this.own = own;
        this.bookings = bookings;
        this.desk = desk;
        this.numbers = numbers;
        this.patientPost = patientPost;
        this.labTime = labTime;
        this.clock = clock;
    }

    @GetMapping("/bookings/{booking}/cancel")
    String ask(@PathVariable BookingId booking, @AuthenticationPrincipal SignedInPerson me, Model model) {
        return page(own.toActOn(booking, me), null, model);
    }

    @PostMapping("/bookings/{booking}/cancel")
    String cancel(
            @PathVariable BookingId booking,
            @RequestParam(required = false) @Nullable String formToken,
            @RequestParam int version,
            @AuthenticationPrincipal SignedInPerson me,
            HttpServletResponse response,
            Model model) {
        own.toActOn(booking, me);
        AtomicReference<@Nullable String> refusal = new AtomicReference<>();
        Optional<String> done = patientPost.run(formToken, () -> {
            Booking now = bookings.lock(booking);
            if (now.version() != version && now.state().holdsItsSlot()) {
                throw own.stale(now, Map.of("State", "cancelled"));
            }
            Transition transition = desk.cancel(booking, me.id());
            if (transition instanceof Transition.Refused refused) {
                refusal.set(refused.says());
                return null;
            }
            return "/bookings/" + booking;
        });
        if (done.isPresent()) {
            return "redirect:" + done.get();
        }
        response.setStatus(HttpStatus.UNPROCESSABLE_CONTENT.value());
        return page(own.toActOn(booking, me), refusal.get(), model);
    }

    private String page(Booking booking, @Nullable String refusal, Model model) {
        int lateMinutes = numbers.inForce().lateCancelMinutes();
        boolean late = clock.instant().isAfter(booking.start().minus(Duration.ofMinutes(lateMinutes)));
        model.addAttribute("booking", booking);
        model.addAttribute("what", own.title(booking));
        model.addAttribute("refusal", refusal);
        model.addAttribute("late", late);
        model.addAttribute(
                "consequence",
                late
                        ? "It starts in less than " + words(lateMinutes)
                                + ", so this is a late cancel: it counts once, as one of your bookings this week. "
                                + "Pressing the e-stop or asking staff to move the booking never counts."
                        : "The slot is free for others at once, and nothing is counted. From "
                                + labTime.time(booking.start().minus(Duration.ofMinutes(lateMinutes))) + " on "
                                + labTime.day(booking.start()) + " it would be a late cancel.");
        return "booking/cancel";
    }

    private static String words(int minutes) {
        return minutes % 60 == 0 ? minutes / 60 + " h" : minutes + " min";
    }
}
