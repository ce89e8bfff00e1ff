package org.standclear.desk.web;

import org.springframework.security.core.annotation.AuthenticationPrincipal;
import org.springframework.stereotype.Controller;
import org.springframework.ui.Model;
import org.springframework.web.bind.annotation.GetMapping;
import org.springframework.web.bind.annotation.PathVariable;
import org.standclear.booking.Booking;
import org.standclear.booking.Bookings;
import org.standclear.platform.ids.BookingId;
import org.standclear.platform.security.SignedInPerson;
import org.standclear.platform.web.NotFoundException;

/** Everything about one booking: what stands, what comes next, what happened. */
@Controller
class BookingPage {

    private final Bookings bookings;
    private final BookingViews views;

    BookingPage(Bookings bookings, BookingViews views) {
        this.bookings = bookings;
        this.views = views;
    }

    @GetMapping("/bookings/{booking}")
    String show(@PathVariable BookingId booking, @AuthenticationPrincipal SignedInPerson me, Model model) {
        Booking found = bookings.find(booking)
                .filter(one -> one.involves(me.id()) || me.isLabStaff())
                .orElseThrow(() -> new NotFoundException("booking"));
        model.addAttribute("view", views.of(found, me));
        return "desk/booking";
    }
}
