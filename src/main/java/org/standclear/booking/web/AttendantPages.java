package org.standclear.booking.web;

import jakarta.servlet.http.HttpServletResponse;
import java.util.LinkedHashMap;
import java.util.Map;
import java.util.Optional;
import java.util.UUID;
import java.util.concurrent.atomic.AtomicReference;
import org.jspecify.annotations.Nullable;
import org.springframework.http.HttpStatus;
import org.springframework.security.core.annotation.AuthenticationPrincipal;
import org.springframework.stereotype.Controller;
import org.springframework.ui.Model;
import org.springframework.web.bind.annotation.GetMapping;
import org.springframework.web.bind.annotation.ModelAttribute;
import org.springframework.web.bind.annotation.PathVariable;
import org.springframework.web.bind.annotation.PostMapping;
import org.standclear.booking.Booking;
import org.standclear.booking.Bookings;
import org.standclear.booking.Bookings.Transition;
import org.standclear.cell.Cells;
import org.standclear.platform.ids.BookingId;
import org.standclear.platform.ids.Id;
import org.standclear.platform.ids.PersonId;
import org.standclear.platform.security.SignedInPerson;
import org.standclear.platform.web.NotFoundException;

/** Names who attends the e-stop, or leaves it open; a named attendant may step back. */
@Controller
class AttendantPages {

    private static final UUID NOBODY = new UUID(0, 0);

    private final OwnBookings own;
    private final Bookings bookings;
    private final SlotChoices choices;
    private final Cells cells;
    private final PatientPost patientPost;

    AttendantPages(OwnBookings own, Bookings bookings, SlotChoices choices, Cells cells, PatientPost patientPost) {
        this.own = own;
        this.bookings = bookings;
        this.choices = choices;
        this.cells = cells;
        this.patientPost = patientPost;
    }

    /** The form as it was sent; an empty attendant means "needs one". */
    record AttendantForm(
            @Nullable String formToken, @Nullable String attendant, int version) {

        boolean leavesOpen() {
            return attendant == null || attendant.isBlank();
        }

        PersonId named() {
            try {
                return new PersonId(attendant == null ? NOBODY : Id.parse(attendant));
            } catch (IllegalArgumentException notAnId) {
                return new PersonId(NOBODY);
            }
        }
    }

    @GetMapping("/bookings/{booking}/attendant")
    String form(@PathVariable BookingId booking, @AuthenticationPrincipal SignedInPerson me, Model model) {
        Booking found = own.toSee(booking, me);
        String chosen = found.attendant() == null ? "" : found.attendant().toString();
        return page(found, new AttendantForm(null, chosen, found.version()), Map.of(), me, model);
    }

    @PostMapping("/bookings/{booking}/attendant")
    String name(
            @PathVariable BookingId booking,
            @ModelAttribute AttendantForm form,
            @AuthenticationPrincipal SignedInPerson me,
            HttpServletResponse response,
            Model model) {
        mayChoose(own.toSee(booking, me), form, me);
        AtomicReference<@Nullable String> refusal = new AtomicReference<>();
        Optional<String> done = patientPost.run(form.formToken(), () -> {
            Booking now = bookings.lock(booking);
            if (now.version() != form.version()) {
                throw own.stale(now, yours(form));
            }
            Transition transition = form.leavesOpen()
                    ? bookings.askForAttendant(booking, me.id())
                    : bookings.nameAttendant(booking, form.named(), me.id());
            if (transition instanceof Transition.Refused refused) {
                refusal.set(refused.says());
                return null;
            }
            return form.leavesOpen()
                            && now.attendant() != null
                            && now.attendant().equals(me.id())
                    ? "/me"
                    : "/bookings/" + booking;
        });
        if (done.isPresent()) {
            return "redirect:" + done.get();
        }
        response.setStatus(HttpStatus.UNPROCESSABLE_CONTENT.value());
        return page(own.toSee(booking, me), form, Map.of("attendant", String.valueOf(refusal.get())), me, model);
    }

    /** The attendant may step back, but only operator and staff choose somebody. */
    private static void mayChoose(Booking booking, AttendantForm form, SignedInPerson me) {
        boolean acts = booking.operator().equals(me.id()) || me.isLabStaff();
        if (!acts && !form.leavesOpen()) {
            throw new NotFoundException("booking");
        }
    }

    private Map<String, String> yours(AttendantForm form) {
        return Map.of("E-stop attendant", form.leavesOpen() ? "needs one" : own.name(form.named()));
    }

    private String page(
            Booking booking, AttendantForm form, Map<String, String> errors, SignedInPerson me, Model model) {
        boolean acts = booking.operator().equals(me.id()) || me.isLabStaff();
        Map<String, String> people = new LinkedHashMap<>();
        cells.find(booking.cell())
                .ifPresent(cell ->
                        people.putAll(choices.attendants(cell, booking.operator(), booking.start(), booking.end())));
        model.addAttribute("booking", booking);
        model.addAttribute("what", own.title(booking));
        model.addAttribute("operator", own.name(booking.operator()));
        model.addAttribute("attendant", own.name(booking.attendant()));
        model.addAttribute("people", people);
        model.addAttribute("form", form);
        model.addAttribute("errors", errors);
        return acts ? "booking/attendant" : "booking/step-back";
    }
}
