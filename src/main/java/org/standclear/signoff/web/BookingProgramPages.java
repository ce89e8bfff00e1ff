package org.standclear.signoff.web;

import jakarta.servlet.http.HttpServletResponse;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
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
import org.standclear.booking.Booking;
import org.standclear.booking.Bookings;
import org.standclear.cell.Cells;
import org.standclear.check.CheckWords;
import org.standclear.check.StoredAnswer;
import org.standclear.people.People;
import org.standclear.platform.forms.PostOnce;
import org.standclear.platform.ids.BookingId;
import org.standclear.platform.ids.RevisionId;
import org.standclear.platform.security.Role;
import org.standclear.platform.security.SignedInPerson;
import org.standclear.platform.time.LabTime;
import org.standclear.platform.web.NotFoundException;
import org.standclear.program.Revision;
import org.standclear.signoff.LapseWords;
import org.standclear.signoff.Preparation;
import org.standclear.signoff.Waiver;

/** Attaches one of a person's programs to a booking and shows what the check says of it. */
@Controller
class BookingProgramPages {

    private final Preparation preparation;
    private final Bookings bookings;
    private final Cells cells;
    private final People people;
    private final LapseWords lapseWords;
    private final LabTime labTime;
    private final PostOnce once;

    BookingProgramPages(
            Preparation preparation,
            Bookings bookings,
            Cells cells,
            People people,
            LapseWords lapseWords,
            LabTime labTime,
            PostOnce once) {
        this.preparation = preparation;
        this.bookings = bookings;
        this.cells = cells;
        this.people = people;
        this.lapseWords = lapseWords;
        this.labTime = labTime;
        this.once = once;
    }

    /** What the page shows. */
    record View(
            String booking,
            String cell,
            String span,
            String operator,
            String headline,
            String finding,
            String state,
            String program,
            String fingerprintHead,
            String fingerprintEnd,
            String answerHref,
            String lapsed,
            String waiver,
            List<String> notChecked,
            boolean waives,
            boolean mayAttach) {}

    @GetMapping("/bookings/{booking}/program")
    String show(@PathVariable BookingId booking, @AuthenticationPrincipal SignedInPerson me, Model model) {
        mustBeTheirs(booking, me);
        return page(preparation.look(booking), me, Map.of(), null, model);
    }

    @PostMapping("/bookings/{booking}/program")
    String attach(
            @PathVariable BookingId booking,
            @RequestParam(required = false) @Nullable RevisionId revision,
            @RequestParam(required = false) @Nullable String formToken,
            @AuthenticationPrincipal SignedInPerson me,
            HttpServletResponse response,
            Model model) {
        mustBeTheirs(booking, me);
        AtomicReference<String> says = new AtomicReference<>("Choose one of the programs.");
        Optional<String> next = once.run(formToken, () -> {
            if (revision == null) {
                return null;
            }
            if (preparation.attach(booking, revision, me.id()) instanceof Preparation.Attached.Refused refused) {
                says.set(refused.says());
                return null;
            }
            return "/bookings/" + booking + "/program";
        });
        if (next.isPresent()) {
            return "redirect:" + next.get();
        }
        response.setStatus(HttpStatus.UNPROCESSABLE_CONTENT.value());
        return page(preparation.look(booking), me, Map.of("revision", says.get()), revision, model);
    }

    private String page(
            Preparation.Prepared prepared,
            SignedInPerson me,
            Map<String, String> errors,
            @Nullable RevisionId chosen,
            Model model) {
        Booking booking = prepared.booking();
        List<Revision> choices = preparation.choices(booking.id(), me.id());
        Map<String, String> options = new LinkedHashMap<>();
        choices.forEach(revision -> options.put(revision.id().toString(), words(revision, me)));
        RevisionId attached = booking.revision();
        model.addAttribute("view", view(prepared, me));
        model.addAttribute("options", options);
        model.addAttribute("chosen", chosen != null ? chosen.toString() : attached == null ? "" : attached.toString());
        model.addAttribute("errors", errors);
        return "signoff/program";
    }

    private String words(Revision revision, SignedInPerson me) {
        String whose = revision.author().equals(me.id()) ? "" : ", by " + people.printedName(revision.author());
        return revision.title() + ", revision " + revision.number() + ", ends in " + revision.fingerprintEnd() + whose;
    }

    private View view(Preparation.Prepared prepared, SignedInPerson me) {
        Booking booking = prepared.booking();
        Revision revision = prepared.revision();
        StoredAnswer answer = prepared.answer();
        String sha = revision == null ? "" : revision.sha256();
        String cell = cells.find(booking.cell()).map(found -> found.name()).orElse("unknown");
        return new View(
                booking.id().toString(),
                cell,
                labTime.datedSpan(booking.start(), booking.end()),
                people.printedName(booking.operator()),
                headline(prepared, cell),
                answer == null ? "" : prepared.says(),
                mark(answer),
                revision == null ? "" : revision.title() + ", revision " + revision.number(),
                sha.isEmpty() ? "" : sha.substring(0, 60),
                sha.isEmpty() ? "" : sha.substring(60),
                answer == null ? "" : "/checks/" + answer.id(),
                prepared.lapsed().map(lapseWords::of).orElse(""),
                prepared.waiver().map(this::words).orElse(""),
                prepared.notChecked(),
                me.is(Role.INSTRUCTOR) && answer != null && answer.verdict() != StoredAnswer.Verdict.WITHIN,
                booking.state().holdsItsSlot() && !booking.state().awaitsCloseOut());
    }

    /** The answer in a few words; the finding stands below it. */
    private static String headline(Preparation.Prepared prepared, String cell) {
        StoredAnswer answer = prepared.answer();
        if (answer == null) {
            return prepared.says();
        }
        return switch (answer.verdict()) {
            case WITHIN -> "Within " + cell + "'s limits";
            case OUTSIDE -> "Outside " + cell + "'s limits";
            case NOT_CHECKABLE -> "Not checkable on " + cell;
        };
    }

    private String words(Waiver waiver) {
        return "Waived for one run by " + people.printedName(waiver.givenBy()) + " until "
                + labTime.full(waiver.expiresAt()) + ": " + CheckWords.checks(waiver.checks()) + ". "
                + waiver.reason() + waiver.confirmed();
    }

    private static String mark(@Nullable StoredAnswer answer) {
        if (answer == null) {
            return "missing";
        }
        return switch (answer.verdict()) {
            case WITHIN -> "within";
            case OUTSIDE -> "outside";
            case NOT_CHECKABLE -> "not-checkable";
        };
    }

    private void mustBeTheirs(BookingId id, SignedInPerson me) {
        boolean theirs = bookings.find(id)
                .filter(booking -> me.isLabStaff() || booking.operator().equals(me.id()))
                .isPresent();
        if (!theirs) {
            throw new NotFoundException("booking");
        }
    }
}
