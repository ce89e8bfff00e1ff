package org.standclear.run.web;

import jakarta.servlet.http.HttpServletResponse;
import java.util.HashMap;
import java.util.Map;
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
import org.standclear.people.People;
import org.standclear.platform.forms.PostOnce;
import org.standclear.platform.ids.BookingId;
import org.standclear.platform.ids.CellId;
import org.standclear.platform.ids.PersonId;
import org.standclear.platform.security.SignedInPerson;
import org.standclear.platform.web.NotFoundException;
import org.standclear.signoff.Handovers;
import org.standclear.signoff.Handovers.Asked;

/** Asks somebody else to the e-stop from the bench screen, gives that up, or says that the attendant has left. */
@Controller
class BenchHandover {

    private final Handovers handovers;
    private final People people;
    private final BenchScreens screens;
    private final BenchPages pages;
    private final PostOnce once;

    BenchHandover(Handovers handovers, People people, BenchScreens screens, BenchPages pages, PostOnce once) {
        this.handovers = handovers;
        this.people = people;
        this.screens = screens;
        this.pages = pages;
        this.once = once;
    }

    @PostMapping("/bench/{cell}/handover")
    String handover(
            @PathVariable CellId cell,
            @RequestParam BookingId booking,
            @RequestParam Map<String, String> fields,
            @AuthenticationPrincipal SignedInPerson me,
            HttpServletResponse response,
            Model model) {
        Booking found = screens.ofCell(cell, booking, me);
        if (!BenchStages.acts(found, me)) {
            throw new NotFoundException("booking");
        }
        AtomicReference<@Nullable String> refused = new AtomicReference<>();
        Optional<String> next = once.run(fields.get("formToken"), () -> {
            if (act(booking, fields, me) instanceof Asked.Refused no) {
                refused.set(no.says());
                return null;
            }
            return BenchListActs.address(cell);
        });
        if (next.isPresent()) {
            return "redirect:" + next.get();
        }
        response.setStatus(HttpStatus.UNPROCESSABLE_CONTENT.value());
        return pages.page(cell, me, Map.of("attendant", String.valueOf(refused.get())), new HashMap<>(fields), model);
    }

    private Asked act(BookingId booking, Map<String, String> fields, SignedInPerson me) {
        return switch (fields.getOrDefault("act", "ask")) {
            case "left" -> handovers.left(booking, me.id());
            case "stay" -> {
                handovers.giveUp(booking, me.id());
                yield new Asked.Opened();
            }
            default -> {
                Optional<PersonId> next = BenchStages.id(fields.getOrDefault("attendant", ""))
                        .filter(id -> people.find(id).isPresent());
                yield next.isEmpty()
                        ? new Asked.Refused("Choose who takes over the e-stop.")
                        : handovers.ask(booking, next.get(), me.id());
            }
        };
    }
}
