package org.standclear.booking.web;

import jakarta.servlet.http.HttpServletResponse;
import java.time.Instant;
import java.time.format.DateTimeParseException;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.UUID;
import java.util.stream.Stream;
import org.jspecify.annotations.Nullable;
import org.springframework.http.HttpStatus;
import org.springframework.security.core.annotation.AuthenticationPrincipal;
import org.springframework.stereotype.Controller;
import org.springframework.ui.Model;
import org.springframework.web.bind.annotation.GetMapping;
import org.springframework.web.bind.annotation.ModelAttribute;
import org.springframework.web.bind.annotation.PathVariable;
import org.springframework.web.bind.annotation.PostMapping;
import org.springframework.web.bind.annotation.RequestParam;
import org.standclear.booking.WaitingList;
import org.standclear.booking.WaitingList.JoinWait;
import org.standclear.booking.WaitingList.Joined;
import org.standclear.booking.WaitingList.Waiting;
import org.standclear.cell.Cells;
import org.standclear.people.Authorisations;
import org.standclear.platform.security.SignedInPerson;
import org.standclear.platform.time.LabTime;
import org.standclear.platform.web.NotFoundException;

/** The waiting list: one's own places on it, the form that joins it, and for staff everybody in the order of asking. */
@Controller
class WaitPages {

    private static final String PATH = "/book/waits";

    private final WaitingList waitingList;
    private final SlotChoices choices;
    private final OwnBookings own;
    private final Cells cells;
    private final Authorisations authorisations;
    private final PatientPost patientPost;
    private final LabTime labTime;

    WaitPages(
            WaitingList waitingList,
            SlotChoices choices,
            OwnBookings own,
            Cells cells,
            Authorisations authorisations,
            PatientPost patientPost,
            LabTime labTime) {
        this.waitingList = waitingList;
        this.choices = choices;
        this.own = own;
        this.cells = cells;
        this.authorisations = authorisations;
        this.patientPost = patientPost;
        this.labTime = labTime;
    }

    /** A place on the list. */
    record Line(
            UUID id,
            String who,
            String what,
            String since,
            @Nullable String offer,
            String offerWords,
            String why) {}

    @GetMapping(PATH)
    String list(
            @RequestParam(required = false) @Nullable String cell,
            @RequestParam(required = false) @Nullable String start,
            @RequestParam(required = false) @Nullable String day,
            @AuthenticationPrincipal SignedInPerson me,
            Model model) {
        Instant slot = instant(start);
        String date = slot != null
                ? labTime.date(slot).toString()
                : day == null ? labTime.today().plusDays(1).toString() : day;
        WaitForm form = slot == null
                ? new WaitForm(null, cell, date, "08:00", "18:00", null)
                : new WaitForm(
                        null,
                        cell,
                        date,
                        labTime.time(slot).substring(0, 5),
                        labTime.time(slot.plusSeconds(3600)).substring(0, 5),
                        null);
        return page(me, form, Map.of(), model);
    }

    private static @Nullable Instant instant(@Nullable String text) {
        try {
            return text == null ? null : Instant.parse(text);
        } catch (DateTimeParseException none) {
            return null;
        }
    }

    @PostMapping(PATH)
    String join(
            @ModelAttribute WaitForm form,
            @AuthenticationPrincipal SignedInPerson me,
            HttpServletResponse response,
            Model model) {
        Map<String, String> errors = new LinkedHashMap<>();
        WaitableCells waitable = waitable(me);
        if (waitable.isEmpty()) {
            errors.put("", waitable.none() + ". " + waitable.todo());
        }
        Optional<JoinWait> wanted = waitable.isEmpty() ? Optional.empty() : form.read(errors, labTime.zone(), me.id());
        if (wanted.isPresent()) {
            Optional<String> done = patientPost.run(form.formToken(), () -> {
                if (waitingList.join(wanted.get()) instanceof Joined.Refused refused) {
                    errors.put(refused.field(), refused.says());
                    return null;
                }
                return PATH;
            });
            if (done.isPresent()) {
                return "redirect:" + done.get();
            }
        }
        response.setStatus(HttpStatus.UNPROCESSABLE_CONTENT.value());
        return page(me, form, errors, model);
    }

    @PostMapping(PATH + "/{wait}/leave")
    String leave(
            @PathVariable UUID wait,
            @RequestParam(required = false) @Nullable String formToken,
            @AuthenticationPrincipal SignedInPerson me) {
        boolean mine = me.isLabStaff()
                || waitingList.of(me.id()).stream().anyMatch(one -> one.id().equals(wait));
        if (!mine) {
            throw new NotFoundException("wait");
        }
        return "redirect:"
                + patientPost
                        .run(formToken, () -> {
                            waitingList.leave(wait, me.id());
                            return PATH;
                        })
                        .orElse(PATH);
    }

    private String page(SignedInPerson me, WaitForm form, Map<String, String> errors, Model model) {
        List<Waiting> all = me.isLabStaff() ? waitingList.all() : List.of();
        OwnBookings.Listed names =
                own.listed(Stream.concat(Stream.of(me.id()), all.stream().map(Waiting::person))
                        .toList());
        List<Line> mine =
                waitingList.of(me.id()).stream().map(one -> line(one, names)).toList();
        model.addAttribute("mine", mine);
        model.addAttribute("all", all.stream().map(one -> line(one, names)).toList());
        model.addAttribute("staff", me.isLabStaff());
        model.addAttribute("headline", headline(mine));
        model.addAttribute("form", form);
        model.addAttribute("errors", errors);
        model.addAttribute("cells", waitable(me));
        model.addAttribute("purposes", choices.purposes(me.id(), null, labTime.now()));
        return "booking/waits";
    }

    private WaitableCells waitable(SignedInPerson me) {
        return WaitableCells.of(cells.all(), authorisations.of(me.id()), labTime.now());
    }

    private static String headline(List<Line> mine) {
        long offers = mine.stream().filter(line -> line.offer() != null).count();
        if (offers > 0) {
            return offers == 1 ? "A slot is offered to you" : offers + " slots are offered to you";
        }
        return mine.isEmpty()
                ? "You wait for no slot"
                : mine.size() == 1 ? "You wait for 1 slot" : "You wait for " + mine.size() + " slots";
    }

    private Line line(Waiting one, OwnBookings.Listed names) {
        String cell = one.cell() == null ? "any cell" : names.cell(one.cell());
        String span = labTime.date(one.from()).equals(labTime.date(one.until()))
                ? labTime.day(one.from()) + ", " + labTime.times(one.from(), one.until())
                : labTime.day(one.from()) + " to " + labTime.day(one.until());
        WaitingList.Offer offer = one.offer();
        return new Line(
                one.id(),
                names.name(one.person()),
                span + ", " + cell,
                labTime.day(one.joinedAt()) + " " + labTime.time(one.joinedAt()),
                offer == null ? null : "/book/offers/" + offer.id(),
                offer == null ? "waiting" : "offered until " + labTime.time(offer.until()),
                one.goesFirst() ? "goes first" : one.passes() > 0 ? "let " + one.passes() + " offers go" : "");
    }
}
