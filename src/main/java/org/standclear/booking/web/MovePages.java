package org.standclear.booking.web;

import jakarta.servlet.http.HttpServletResponse;
import java.time.Clock;
import java.time.DateTimeException;
import java.time.Instant;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.stream.Collectors;
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
import org.standclear.booking.BookingDesk;
import org.standclear.booking.BookingDesk.Outcome;
import org.standclear.booking.Bookings;
import org.standclear.booking.Bookings.Transition;
import org.standclear.booking.MoveBooking;
import org.standclear.booking.SlotCalendar;
import org.standclear.cell.Cell;
import org.standclear.cell.Cells;
import org.standclear.platform.ids.BookingId;
import org.standclear.platform.ids.CellId;
import org.standclear.platform.ids.PersonId;
import org.standclear.platform.security.SignedInPerson;
import org.standclear.platform.text.PlainText;
import org.standclear.platform.time.LabTime;

/** Staff move a booking to a free slot, or take it off the calendar; nobody is counted for that. */
@Controller
class MovePages {

    private static final int OFFERED = 40;
    private static final int LONGEST_REASON = 200;

    private final OwnBookings own;
    private final Bookings bookings;
    private final BookingDesk desk;
    private final SlotCalendar calendar;
    private final Cells cells;
    private final PatientPost patientPost;
    private final LabTime labTime;
    private final Clock clock;

    MovePages(
            OwnBookings own,
            Bookings bookings,
            BookingDesk desk,
            SlotCalendar calendar,
            Cells cells,
            PatientPost patientPost,
            LabTime labTime,
            Clock clock) {
        this.own = own;
        this.bookings = bookings;
        this.desk = desk;
        this.calendar = calendar;
        this.cells = cells;
        this.patientPost = patientPost;
        this.labTime = labTime;
        this.clock = clock;
    }

    /**
     * The form as it was sent.
     *
     * @param slot a cell's id and a start, or empty for no other slot
     */
    record MoveForm(
            @Nullable String formToken,
            @Nullable String slot,
            @Nullable String keepsAttendant,
            @Nullable String reason,
            int version) {

        boolean frees() {
            return slot == null || slot.isBlank();
        }

        /** Where to; empty when it cannot be read. */
        Optional<MoveBooking> order(BookingId booking, PersonId by, String why) {
            String[] parts = String.valueOf(slot).split(" ", 2);
            try {
                return Optional.of(new MoveBooking(
                        booking,
                        CellId.of(parts[0]),
                        Instant.parse(parts.length < 2 ? "" : parts[1]),
                        "true".equals(keepsAttendant),
                        by,
                        why));
            } catch (IllegalArgumentException | DateTimeException unreadable) {
                return Optional.empty();
            }
        }
    }

    @GetMapping("/bookings/{booking}/move")
    String form(@PathVariable BookingId booking, @AuthenticationPrincipal SignedInPerson me, Model model) {
        Booking found = own.toActOn(booking, me);
        return page(found, new MoveForm(null, null, "true", "", found.version()), Map.of(), model);
    }

    @PostMapping("/bookings/{booking}/move")
    String move(
            @PathVariable BookingId booking,
            @ModelAttribute MoveForm form,
            @AuthenticationPrincipal SignedInPerson me,
            HttpServletResponse response,
            Model model) {
        own.toActOn(booking, me);
        Map<String, String> errors = new LinkedHashMap<>();
        if (PlainText.check(form.reason(), LONGEST_REASON) instanceof PlainText.Fine why) {
            Optional<String> done = patientPost.run(form.formToken(), () -> {
                Booking now = bookings.lock(booking);
                if (now.version() != form.version() && now.state().holdsItsSlot()) {
                    throw own.stale(now, Map.of("State", "moved by staff"));
                }
                return form.frees()
                        ? freed(booking, me.id(), why.text(), errors)
                        : moved(form.order(booking, me.id(), why.text()), errors);
            });
            if (done.isPresent()) {
                return "redirect:" + done.get();
            }
        } else if (PlainText.check(form.reason(), LONGEST_REASON) instanceof PlainText.Refused refused) {
            errors.put("reason", refused.says());
        }
        response.setStatus(HttpStatus.UNPROCESSABLE_CONTENT.value());
        return page(own.toActOn(booking, me), form, errors, model);
    }

    private @Nullable String freed(BookingId booking, PersonId by, String why, Map<String, String> errors) {
        if (desk.moveByStaff(booking, by, why) instanceof Transition.Refused refused) {
            errors.put("", refused.says());
            return null;
        }
        return "/bookings/" + booking;
    }

    private @Nullable String moved(Optional<MoveBooking> order, Map<String, String> errors) {
        if (order.isEmpty()) {
            errors.put("slot", "Choose a slot from the list.");
            return null;
        }
        Outcome outcome = desk.moveTo(order.get());
        if (outcome instanceof Outcome.Booked booked) {
            return "/bookings/" + booked.booking().id();
        }
        Outcome.Refused refused = (Outcome.Refused) outcome;
        boolean attendant = refused.rule().startsWith("attendant");
        errors.put(attendant ? "keepsAttendant" : "slot", refused.says());
        return null;
    }

    private String page(Booking booking, MoveForm form, Map<String, String> errors, Model model) {
        Map<CellId, String> names = cells.all().stream().collect(Collectors.toMap(Cell::id, Cell::name));
        Map<String, String> slots = new LinkedHashMap<>();
        slots.put("", "No other slot: take it off the calendar");
        List<org.standclear.booking.Slot> free = calendar.nextFree(booking.operator(), clock.instant(), OFFERED);
        free.forEach(slot -> slots.put(
                slot.cell() + " " + slot.start(),
                labTime.day(slot.start()) + " " + labTime.times(slot.start(), slot.end()) + ", "
                        + names.getOrDefault(slot.cell(), "a cell")));
        model.addAttribute("booking", booking);
        model.addAttribute("what", own.title(booking));
        model.addAttribute("operator", own.name(booking.operator()));
        model.addAttribute("attendant", booking.attendant() == null ? null : own.name(booking.attendant()));
        model.addAttribute("slots", slots);
        model.addAttribute("form", form);
        model.addAttribute("errors", errors);
        return "booking/move";
    }
}
