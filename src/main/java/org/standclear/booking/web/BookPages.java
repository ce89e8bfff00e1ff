package org.standclear.booking.web;

import jakarta.servlet.http.HttpServletResponse;
import java.time.Instant;
import java.util.List;
import java.util.Optional;
import java.util.concurrent.atomic.AtomicReference;
import org.jspecify.annotations.Nullable;
import org.springframework.http.HttpStatus;
import org.springframework.security.core.annotation.AuthenticationPrincipal;
import org.springframework.stereotype.Controller;
import org.springframework.ui.Model;
import org.springframework.web.bind.annotation.GetMapping;
import org.springframework.web.bind.annotation.ModelAttribute;
import org.springframework.web.bind.annotation.PostMapping;
import org.springframework.web.bind.annotation.RequestParam;
import org.standclear.booking.BookingDesk;
import org.standclear.booking.BookingDesk.Outcome;
import org.standclear.booking.MakeBooking;
import org.standclear.booking.Slot;
import org.standclear.booking.SlotCalendar;
import org.standclear.platform.ids.CellId;
import org.standclear.platform.security.SignedInPerson;
import org.standclear.platform.web.NotFoundException;

/** Free slots by day and cell, and the form that books one. */
@Controller
class BookPages {

    private static final int NEXT_FREE = 6;

    private final DayViews days;
    private final SlotViews slots;
    private final BookingDesk desk;
    private final SlotCalendar calendar;
    private final PatientPost patientPost;

    BookPages(DayViews days, SlotViews slots, BookingDesk desk, SlotCalendar calendar, PatientPost patientPost) {
        this.days = days;
        this.slots = slots;
        this.desk = desk;
        this.calendar = calendar;
        this.patientPost = patientPost;
    }

    @GetMapping("/book")
    String day(
            @RequestParam(required = false) @Nullable String day,
            @AuthenticationPrincipal SignedInPerson me,
            HttpServletResponse response,
            Model model) {
        DayView view = days.of(day, me);
        if (view.misread() != null) {
            response.setStatus(HttpStatus.BAD_REQUEST.value());
        }
        model.addAttribute("view", view);
        return "booking/day";
    }

    @GetMapping("/book/slot")
    String slot(@ModelAttribute SlotForm form, @AuthenticationPrincipal SignedInPerson me, Model model) {
        CellId cell = form.cellRead().orElseThrow(() -> new NotFoundException("cell"));
        Instant start = form.startRead().orElseThrow(() -> new NotFoundException("slot"));
        Optional<Outcome.Refused> objection =
                desk.objection(new MakeBooking(cell, start, me.id(), null, null, null, me.id()));
        model.addAttribute("view", slots.of(form, cell, start, me, objection.orElse(null)));
        return "booking/slot";
    }

    @PostMapping("/book")
    String book(
            @ModelAttribute SlotForm form,
            @AuthenticationPrincipal SignedInPerson me,
            HttpServletResponse response,
            Model model) {
        CellId cell = form.cellRead().orElseThrow(() -> new NotFoundException("cell"));
        Optional<Instant> start = form.startRead();
        if (start.isEmpty()) {
            response.setStatus(HttpStatus.UNPROCESSABLE_CONTENT.value());
            model.addAttribute("view", slots.unreadable(form, cell));
            return "booking/slot";
        }
        AtomicReference<Outcome.@Nullable Refused> refused = new AtomicReference<>();
        Optional<String> booked = tried(form, form.wanted(cell, start.get(), me.id()), refused);
        if (booked.isPresent()) {
            return "redirect:" + booked.get();
        }
        Outcome.Refused refusal = refused.get();
        response.setStatus(status(refusal).value());
        model.addAttribute("view", slots.of(form, cell, start.get(), me, refusal));
        return "booking/slot";
    }

    private Optional<String> tried(
            SlotForm form, MakeBooking wanted, AtomicReference<Outcome.@Nullable Refused> refused) {
        try {
            return patientPost.run(form.formToken(), () -> {
                Outcome outcome = desk.book(wanted);
                if (outcome instanceof Outcome.Booked booked) {
                    return "/bookings/" + booked.booking().id();
                }
                refused.set((Outcome.Refused) outcome);
                return null;
            });
        } catch (PatientPost.TooBusyException busy) {
            refused.set(new Outcome.Refused(
                    "busy",
                    "Many people are booking at this moment and the slot could not be decided. Nothing was booked; "
                            + "send the form again.",
                    others(wanted)));
            return Optional.empty();
        }
    }

    /** Free slots but the one that could not be decided. */
    private List<Slot> others(MakeBooking wanted) {
        return calendar.nextFree(wanted.operator(), wanted.start(), NEXT_FREE + 1).stream()
                .filter(slot ->
                        !(slot.cell().equals(wanted.cell()) && slot.start().equals(wanted.start())))
                .limit(NEXT_FREE)
                .toList();
    }

    /** Somebody was faster: a conflict. Everything else could have been known when the form was filled in. */
    private static HttpStatus status(Outcome.@Nullable Refused refusal) {
        boolean conflict = refusal != null
                && (refusal.rule().equals("taken") || refusal.rule().equals("busy"));
        return conflict ? HttpStatus.CONFLICT : HttpStatus.UNPROCESSABLE_CONTENT;
    }
}
