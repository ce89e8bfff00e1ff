package org.standclear.booking.web;

import jakarta.servlet.http.HttpServletResponse;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.Optional;
import java.util.stream.Stream;
import org.jspecify.annotations.Nullable;
import org.springframework.http.HttpStatus;
import org.springframework.security.core.annotation.AuthenticationPrincipal;
import org.springframework.stereotype.Controller;
import org.springframework.ui.Model;
import org.springframework.web.bind.annotation.GetMapping;
import org.springframework.web.bind.annotation.PathVariable;
import org.springframework.web.bind.annotation.PostMapping;
import org.springframework.web.bind.annotation.RequestParam;
import org.standclear.booking.Turns;
import org.standclear.booking.Turns.Lost;
import org.standclear.platform.access.AccessLog;
import org.standclear.platform.access.Sight;
import org.standclear.platform.ids.BookingId;
import org.standclear.platform.ids.PersonId;
import org.standclear.platform.security.SignedInPerson;
import org.standclear.platform.web.NotFoundException;

/** Turns that were lost: the student says why, staff excuse them. */
@Controller
class LostPages {

    private static final int DAYS = 14;

    private final Turns turns;
    private final OwnBookings own;
    private final PatientPost patientPost;
    private final AccessLog looks;

    LostPages(Turns turns, OwnBookings own, PatientPost patientPost, AccessLog looks) {
        this.turns = turns;
        this.own = own;
        this.patientPost = patientPost;
        this.looks = looks;
    }

    /** A lost booking in the list. */
    record Line(
            String id,
            String what,
            String who,
            String person,
            String state,
            String words,
            String says,
            boolean excused) {}

    @GetMapping("/book/lost")
    String list(@AuthenticationPrincipal SignedInPerson me, Model model) {
        List<Lost> lost = turns.lost(DAYS);
        List<PersonId> whose =
                lost.stream().map(one -> one.booking().operator()).distinct().toList();
        if (!whose.isEmpty()) {
            looks.looked(me.id(), Sight.TURNS, "lost", whose);
        }
        OwnBookings.Listed names = own.listed(lost.stream()
                .flatMap(one -> Stream.of(one.booking().operator(), one.excusedBy()))
                .filter(Objects::nonNull)
                .toList());
        List<Line> lines = lost.stream().map(one -> line(one, names)).toList();
        long open = lines.stream().filter(line -> !line.excused()).count();
        model.addAttribute("lines", lines);
        model.addAttribute(
                "headline",
                lines.isEmpty()
                        ? "No turn was lost in 14 days"
                        : open + " of " + lines.size()
                                + (lines.size() == 1 ? " lost turn counts" : " lost turns count"));
        return "booking/lost";
    }

    @GetMapping("/bookings/{booking}/lost")
    String explain(@PathVariable BookingId booking, @AuthenticationPrincipal SignedInPerson me, Model model) {
        Lost lost = mine(booking, me);
        return page(lost, lost.words(), Map.of(), model);
    }

    @PostMapping("/bookings/{booking}/lost")
    String explained(
            @PathVariable BookingId booking,
            @RequestParam(required = false) @Nullable String formToken,
            @RequestParam(defaultValue = "") String words,
            @AuthenticationPrincipal SignedInPerson me,
            HttpServletResponse response,
            Model model) {
        Lost lost = mine(booking, me);
        java.util.concurrent.atomic.AtomicReference<String> wrong =
                new java.util.concurrent.atomic.AtomicReference<>("");
        Optional<String> done = patientPost.run(formToken, () -> {
            Optional<String> says = turns.explain(booking, me.id(), words);
            says.ifPresent(wrong::set);
            return says.isPresent() ? null : "/bookings/" + booking;
        });
        if (done.isPresent()) {
            return "redirect:" + done.get();
        }
        response.setStatus(HttpStatus.UNPROCESSABLE_CONTENT.value());
        return page(lost, words, Map.of("words", String.valueOf(wrong.get())), model);
    }

    @PostMapping("/bookings/{booking}/excuse")
    String excuse(
            @PathVariable BookingId booking,
            @RequestParam(required = false) @Nullable String formToken,
            @RequestParam(required = false) @Nullable String makeUp,
            @AuthenticationPrincipal SignedInPerson me) {
        lost(booking);
        return act(formToken, () -> turns.excuse(booking, "true".equals(makeUp), me.id()));
    }

    @PostMapping("/bookings/{booking}/count-again")
    String countAgain(
            @PathVariable BookingId booking,
            @RequestParam(required = false) @Nullable String formToken,
            @AuthenticationPrincipal SignedInPerson me) {
        lost(booking);
        return act(formToken, () -> turns.countAgain(booking, me.id()));
    }

    private String act(@Nullable String formToken, Runnable act) {
        return "redirect:"
                + patientPost
                        .run(formToken, () -> {
                            act.run();
                            return "/book/lost";
                        })
                        .orElse("/book/lost");
    }

    private Lost lost(BookingId booking) {
        return turns.find(booking).orElseThrow(() -> new NotFoundException("booking"));
    }

    private Lost mine(BookingId booking, SignedInPerson me) {
        return turns.find(booking)
                .filter(one -> one.booking().operator().equals(me.id()))
                .orElseThrow(() -> new NotFoundException("booking"));
    }

    private String page(Lost lost, String words, Map<String, String> errors, Model model) {
        model.addAttribute("booking", lost.booking());
        model.addAttribute("what", own.title(lost.booking()));
        model.addAttribute("state", lost.booking().state().words());
        model.addAttribute("excused", lost.excusedBy() != null);
        model.addAttribute("words", words);
        model.addAttribute("errors", errors);
        return "booking/explain";
    }

    private static Line line(Lost one, OwnBookings.Listed names) {
        return new Line(
                one.booking().id().toString(),
                names.title(one.booking()),
                names.name(one.booking().operator()),
                one.booking().operator().toString(),
                org.standclear.booking.CellStrips.key(one.booking().state()),
                one.excusedBy() == null
                        ? one.booking().state().words() + ", counts"
                        : one.booking().state().words() + ", excused by " + names.name(one.excusedBy()),
                one.words(),
                one.excusedBy() != null);
    }
}
