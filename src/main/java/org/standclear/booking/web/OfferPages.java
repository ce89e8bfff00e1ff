package org.standclear.booking.web;

import jakarta.servlet.http.HttpServletResponse;
import java.util.Optional;
import java.util.UUID;
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
import org.standclear.booking.BookingDesk.Outcome;
import org.standclear.booking.OfferState;
import org.standclear.booking.WaitingList;
import org.standclear.booking.WaitingList.Offer;
import org.standclear.cell.Cells;
import org.standclear.platform.security.SignedInPerson;
import org.standclear.platform.time.LabTime;
import org.standclear.platform.web.NotFoundException;

/** A slot that is offered to somebody who waits: take it, or leave it to the next. */
@Controller
class OfferPages {

    private final WaitingList waitingList;
    private final Cells cells;
    private final PatientPost patientPost;
    private final LabTime labTime;

    OfferPages(WaitingList waitingList, Cells cells, PatientPost patientPost, LabTime labTime) {
        this.waitingList = waitingList;
        this.cells = cells;
        this.patientPost = patientPost;
        this.labTime = labTime;
    }

    @GetMapping("/book/offers/{offer}")
    String show(@PathVariable UUID offer, @AuthenticationPrincipal SignedInPerson me, Model model) {
        return page(mine(offer, me), null, model);
    }

    @PostMapping("/book/offers/{offer}/take")
    String take(
            @PathVariable UUID offer,
            @RequestParam(required = false) @Nullable String formToken,
            @AuthenticationPrincipal SignedInPerson me,
            HttpServletResponse response,
            Model model) {
        mine(offer, me);
        AtomicReference<@Nullable String> refusal = new AtomicReference<>();
        Optional<String> done = patientPost.run(formToken, () -> {
            Outcome outcome = waitingList.accept(offer, me.id());
            if (outcome instanceof Outcome.Booked booked) {
                return "/bookings/" + booked.booking().id();
            }
            refusal.set(((Outcome.Refused) outcome).says());
            return null;
        });
        if (done.isPresent()) {
            return "redirect:" + done.get();
        }
        response.setStatus(HttpStatus.UNPROCESSABLE_CONTENT.value());
        return page(mine(offer, me), refusal.get(), model);
    }

    @PostMapping("/book/offers/{offer}/decline")
    String decline(
            @PathVariable UUID offer,
            @RequestParam(required = false) @Nullable String formToken,
            @AuthenticationPrincipal SignedInPerson me) {
        mine(offer, me);
        return "redirect:"
                + patientPost
                        .run(formToken, () -> {
                            waitingList.decline(offer, me.id());
                            return "/book/waits";
                        })
                        .orElse("/book/waits");
    }

    private Offer mine(UUID id, SignedInPerson me) {
        return waitingList
                .offer(id)
                .filter(offer -> offer.person().equals(me.id()))
                .orElseThrow(() -> new NotFoundException("offer"));
    }

    private String page(Offer offer, @Nullable String refusal, Model model) {
        String cell = cells.find(offer.slot().cell()).map(found -> found.name()).orElse("A cell");
        boolean open = offer.state() == OfferState.OPEN;
        model.addAttribute("offer", offer);
        model.addAttribute("open", open);
        model.addAttribute(
                "what",
                cell + ", " + labTime.day(offer.slot().start()) + ", "
                        + labTime.times(offer.slot().start(), offer.slot().end()));
        model.addAttribute("until", labTime.time(offer.until()));
        model.addAttribute("untilIso", labTime.iso(offer.until()));
        model.addAttribute("refusal", refusal);
        return "booking/offer";
    }
}
