package org.standclear.desk.web;

import java.util.List;
import java.util.Optional;
import org.springframework.security.core.annotation.AuthenticationPrincipal;
import org.springframework.stereotype.Controller;
import org.springframework.ui.Model;
import org.springframework.web.bind.annotation.GetMapping;
import org.springframework.web.bind.annotation.PathVariable;
import org.standclear.booking.Booking;
import org.standclear.booking.Bookings;
import org.standclear.booking.Confirmations;
import org.standclear.people.Accommodations;
import org.standclear.people.Accommodations.Accommodation;
import org.standclear.platform.access.AccessLog;
import org.standclear.platform.access.Sight;
import org.standclear.platform.ids.BookingId;
import org.standclear.platform.security.SignedInPerson;
import org.standclear.platform.time.LabTime;
import org.standclear.platform.web.NotFoundException;
import org.standclear.signoff.PaperCards;

/** Everything about one booking: what stands, what comes next, what happened. */
@Controller
class BookingPage {

    private final Bookings bookings;
    private final BookingViews views;
    private final PaperCards paper;
    private final Accommodations accommodations;
    private final Confirmations confirmations;
    private final LabTime labTime;
    private final AccessLog looks;

    BookingPage(
            Bookings bookings,
            BookingViews views,
            PaperCards paper,
            Accommodations accommodations,
            Confirmations confirmations,
            LabTime labTime,
            AccessLog looks) {
        this.bookings = bookings;
        this.views = views;
        this.paper = paper;
        this.accommodations = accommodations;
        this.confirmations = confirmations;
        this.labTime = labTime;
        this.looks = looks;
    }

    @GetMapping("/bookings/{booking}")
    String show(@PathVariable BookingId booking, @AuthenticationPrincipal SignedInPerson me, Model model) {
        Booking found = bookings.find(booking)
                .filter(one -> one.involves(me.id()) || me.isLabStaff())
                .orElseThrow(() -> new NotFoundException("booking"));
        model.addAttribute("view", views.of(found, me));
        model.addAttribute("paper", paper.of(booking).stream().map(paper::words).toList());
        // who attends does not learn it: for lab staff, who prepare it, and the operator only
        boolean prepares = me.isLabStaff() || me.id().equals(found.operator());
        Optional<Accommodation> arrangement = prepares ? accommodations.of(found.operator()) : Optional.empty();
        if (arrangement.isPresent()) {
            looks.looked(me.id(), Sight.TURNS, booking.toString(), List.of(found.operator()));
        }
        model.addAttribute("arrangement", arrangement.map(Accommodation::words).orElse(null));
        model.addAttribute(
                "coming",
                prepares ? confirmations.askedUntil(booking).map(labTime::full).orElse(null) : null);
        model.addAttribute(
                "confirmed",
                confirmations.confirmedAt(booking).map(labTime::full).orElse(null));
        return "desk/booking";
    }
}
