package org.standclear.booking.web;

import jakarta.servlet.http.HttpServletResponse;
import java.util.Map;
import org.springframework.security.core.annotation.AuthenticationPrincipal;
import org.springframework.stereotype.Controller;
import org.springframework.ui.Model;
import org.springframework.web.bind.annotation.GetMapping;
import org.springframework.web.bind.annotation.PostMapping;
import org.springframework.web.bind.annotation.RequestParam;
import org.standclear.booking.BookingNumbers;
import org.standclear.booking.BookingSettings;
import org.standclear.platform.numbers.web.NumbersPage;
import org.standclear.platform.security.Role;
import org.standclear.platform.security.SignedInPerson;
import org.standclear.platform.time.LabTime;

/** The numbers of the booking rules: what holds, since when and why, and the form that changes them. */
@Controller
class RulesPages {

    private static final String ADDRESS = "/book/rules";

    private final NumbersPage<BookingSettings> page;

    RulesPages(BookingNumbers numbers, OwnBookings own, PatientPost once, LabTime labTime) {
        page = new NumbersPage<>(
                numbers,
                BookingNumbers.SET,
                new NumbersPage.Place(ADDRESS, "booking/rules", "The booking rules"),
                new NumbersPage.Words(own::name, labTime::full),
                once::run);
    }

    private static boolean mayChange(SignedInPerson me) {
        return me.is(Role.INSTRUCTOR) || me.is(Role.ADMINISTRATOR);
    }

    @GetMapping(ADDRESS)
    String show(@AuthenticationPrincipal SignedInPerson me, Model model) {
        return page.show(mayChange(me), model);
    }

    @PostMapping(ADDRESS)
    String change(
            @RequestParam Map<String, String> fields,
            @AuthenticationPrincipal SignedInPerson me,
            HttpServletResponse response,
            Model model) {
        return page.change(mayChange(me), fields, me.id(), response, model);
    }
}
