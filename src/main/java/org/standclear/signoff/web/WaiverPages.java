package org.standclear.signoff.web;

import jakarta.servlet.http.HttpServletResponse;
import java.time.Clock;
import java.time.DateTimeException;
import java.time.Instant;
import java.time.LocalTime;
import java.time.ZonedDateTime;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.UUID;
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
import org.standclear.cell.Cell;
import org.standclear.cell.Cells;
import org.standclear.check.CheckWords;
import org.standclear.check.StoredAnswer;
import org.standclear.people.People;
import org.standclear.platform.forms.PostOnce;
import org.standclear.platform.ids.AnswerId;
import org.standclear.platform.ids.BookingId;
import org.standclear.platform.security.SignedInPerson;
import org.standclear.platform.time.LabTime;
import org.standclear.signoff.Waiver;
import org.standclear.signoff.Waivers;

/** An instructor waives a failed check for one run, or takes that back before the run. */
@Controller
class WaiverPages {

    private static final String LINES_READ = "linesRead";

    private final Waivers waivers;
    private final UnreadLines unread;
    private final Cells cells;
    private final People people;
    private final LabTime labTime;
    private final PostOnce once;
    private final Clock clock;

    WaiverPages(
            Waivers waivers,
            UnreadLines unread,
            Cells cells,
            People people,
            LabTime labTime,
            PostOnce once,
            Clock clock) {
        this.waivers = waivers;
        this.unread = unread;
        this.cells = cells;
        this.people = people;
        this.labTime = labTime;
        this.once = once;
        this.clock = clock;
    }

    /** The form as it was sent. */
    record WaiverForm(
            @Nullable String formToken,
            @Nullable AnswerId answer,
            @Nullable String reason,
            @Nullable String expires,
            @Nullable Boolean linesRead,
            @Nullable String sentence,
            @Nullable String shown,
            @Nullable UUID waiver,
            @Nullable String takeBackReason) {

        private static WaiverForm empty(String end) {
            return new WaiverForm(null, null, "", end, null, null, null, null, "");
        }
    }

    /** What the page shows. */
    record View(
            String booking,
            String cell,
            String span,
            String operator,
            String headline,
            String state,
            String refusal,
            String answer,
            List<Waivers.Blocking> blocking,
            List<Given> given) {}

    /**
     * A waiver of this booking and what became of it.
     *
     * @param id of one that can be taken back; empty when it no longer stands
     */
    record Given(String words, String stands, String state, String id) {}

    @GetMapping("/bookings/{booking}/waiver")
    String show(@PathVariable BookingId booking, Model model) {
        Waivers.Question question = waivers.question(booking);
        String end = labTime.time(question.prepared().booking().end());
        return page(question, WaiverForm.empty(end), Map.of(), model);
    }

    @PostMapping("/bookings/{booking}/waiver")
    String give(
            @PathVariable BookingId booking,
            @ModelAttribute WaiverForm form,
            @AuthenticationPrincipal SignedInPerson me,
            HttpServletResponse response,
            Model model) {
        Waivers.Question question = waivers.question(booking);
        Map<String, String> errors = new HashMap<>();
        String unseen = question.refusal().isEmpty() && question.prepared().answer() != null
                ? unread.of(question).against(form.shown())
                : "";
        Optional<String> next = once.run(form.formToken(), () -> {
            if (!unseen.isEmpty()) {
                errors.put(LINES_READ, unseen);
                return null;
            }
            Waivers.Given given = waivers.give(new Waivers.GiveWaiver(
                    booking,
                    form.answer(),
                    form.reason() == null ? "" : form.reason(),
                    instant(form.expires(), question.prepared().booking()),
                    Boolean.TRUE.equals(form.linesRead()) ? form.sentence() : null,
                    me.id()));
            if (given instanceof Waivers.Given.Refused refused) {
                errors.put(refused.field(), refused.says());
                return null;
            }
            return "/bookings/" + booking + "/program";
        });
        if (next.isPresent()) {
            return "redirect:" + next.get();
        }
        response.setStatus(HttpStatus.UNPROCESSABLE_CONTENT.value());
        return page(question, form, errors, model);
    }

    @PostMapping("/bookings/{booking}/waiver/take-back")
    String takeBack(
            @PathVariable BookingId booking,
            @ModelAttribute WaiverForm form,
            @AuthenticationPrincipal SignedInPerson me,
            HttpServletResponse response,
            Model model) {
        Map<String, String> errors = new HashMap<>();
        Optional<String> next = once.run(form.formToken(), () -> {
            String reason = form.takeBackReason() == null ? "" : form.takeBackReason();
            Waivers.Given taken = waivers.takeBack(new Waivers.TakeBack(booking, form.waiver(), reason, me.id()));
            if (taken instanceof Waivers.Given.Refused refused) {
                errors.put(refused.field(), refused.says());
                return null;
            }
            return "/bookings/" + booking + "/waiver";
        });
        if (next.isPresent()) {
            return "redirect:" + next.get();
        }
        response.setStatus(HttpStatus.UNPROCESSABLE_CONTENT.value());
        Waivers.Question question = waivers.question(booking);
        String end = labTime.time(question.prepared().booking().end());
        WaiverForm again = new WaiverForm(null, null, "", end, null, null, null, form.waiver(), form.takeBackReason());
        return page(question, again, errors, model);
    }

    /** A time on the day of the slot; null when it is none. */
    private @Nullable Instant instant(@Nullable String typed, Booking booking) {
        try {
            LocalTime time = LocalTime.parse(typed == null ? "" : typed.strip());
            ZonedDateTime end = booking.end().atZone(labTime.zone());
            return end.with(time).toInstant();
        } catch (DateTimeException notATime) {
            return null;
        }
    }

    private String page(Waivers.Question question, WaiverForm form, Map<String, String> errors, Model model) {
        model.addAttribute("view", view(question));
        UnreadLines.Shown shown = unread.of(question);
        model.addAttribute("unread", shown);
        model.addAttribute("notNow", UnreadLines.NOT_NOW);
        // a tick that was set before these lines were shown is set again, by a person
        model.addAttribute(
                "ticked",
                Boolean.TRUE.equals(form.linesRead())
                        && shown.against(form.shown()).isEmpty());
        model.addAttribute("confirm", Waiver.LINES_READ);
        model.addAttribute("form", form);
        model.addAttribute("errors", errors);
        return "signoff/waiver";
    }

    private View view(Waivers.Question question) {
        Booking booking = question.prepared().booking();
        StoredAnswer answer = question.prepared().answer();
        return new View(
                booking.id().toString(),
                cells.find(booking.cell()).map(Cell::name).orElse("unknown"),
                labTime.datedSpan(booking.start(), booking.end()),
                people.printedName(booking.operator()),
                question.prepared().says(),
                answer == null ? "missing" : answer.verdict().mark(),
                question.refusal(),
                answer == null ? "" : answer.id().toString(),
                question.blocking(),
                waivers.of(booking.id()).stream().map(this::given).toList());
    }

    private Given given(Waiver waiver) {
        String words = CheckWords.checks(waiver.checks()) + ", by " + people.printedName(waiver.givenBy()) + " at "
                + labTime.time(waiver.givenAt()) + ": " + waiver.reason() + waiver.confirmed();
        Instant used = waiver.usedAt();
        if (used != null) {
            return new Given(words, "used up at " + labTime.time(used), "done", "");
        }
        Waiver.TakenBack taken = waiver.takenBack();
        if (taken != null) {
            String back = "taken back at " + labTime.time(taken.at()) + " by " + people.printedName(taken.by());
            return new Given(words + " Taken back: " + taken.reason(), back, "cancelled", "");
        }
        if (waiver.leavesLinesUnread()) {
            return new Given(words, "does not count: nobody confirmed the unread lines", "expired", "");
        }
        return waiver.standsAt(clock.instant())
                ? new Given(
                        words,
                        "until " + labTime.full(waiver.expiresAt()),
                        "caution",
                        waiver.id().toString())
                : new Given(words, "expired at " + labTime.time(waiver.expiresAt()), "expired", "");
    }
}
