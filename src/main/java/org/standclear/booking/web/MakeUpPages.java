package org.standclear.booking.web;

import jakarta.servlet.http.HttpServletResponse;
import java.util.LinkedHashMap;
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
import org.springframework.web.bind.annotation.PathVariable;
import org.springframework.web.bind.annotation.PostMapping;
import org.springframework.web.bind.annotation.RequestParam;
import org.standclear.booking.Bookings;
import org.standclear.booking.Turns;
import org.standclear.booking.Turns.MakeUp;
import org.standclear.people.People;
import org.standclear.people.Person;
import org.standclear.platform.access.AccessLog;
import org.standclear.platform.access.Sight;
import org.standclear.platform.ids.BookingId;
import org.standclear.platform.ids.PersonId;
import org.standclear.platform.security.SignedInPerson;
import org.standclear.platform.time.LabTime;
import org.standclear.platform.web.NotFoundException;

/** All make-ups of the lab: who has one, why, in which order they are used; staff give and withdraw them here. */
@Controller
class MakeUpPages {

    private static final String PATH = "/book/make-ups";
    private static final int DAYS = 90;

    private final Turns turns;
    private final People people;
    private final OwnBookings own;
    private final Bookings bookings;
    private final PatientPost patientPost;
    private final LabTime labTime;
    private final AccessLog looks;

    MakeUpPages(
            Turns turns,
            People people,
            OwnBookings own,
            Bookings bookings,
            PatientPost patientPost,
            LabTime labTime,
            AccessLog looks) {
        this.turns = turns;
        this.people = people;
        this.own = own;
        this.bookings = bookings;
        this.patientPost = patientPost;
        this.labTime = labTime;
        this.looks = looks;
    }

    /** One make-up in the list. */
    record Line(
            String id,
            String who,
            String person,
            String given,
            String why,
            String state,
            String words,
            boolean stands) {}

    @GetMapping(PATH)
    String list(@AuthenticationPrincipal SignedInPerson me, Model model) {
        return page(me, "", "", Map.of(), model);
    }

    @PostMapping(PATH)
    String give(
            @RequestParam(required = false) @Nullable String formToken,
            @RequestParam(defaultValue = "") String login,
            @RequestParam(defaultValue = "") String reason,
            @AuthenticationPrincipal SignedInPerson me,
            HttpServletResponse response,
            Model model) {
        Map<String, String> errors = new LinkedHashMap<>();
        Optional<Person> person = people.byLogin(login.strip())
                .filter(one -> one.active() && !one.roles().isEmpty());
        if (person.isEmpty()) {
            errors.put("login", "No open account has the sign-in name \"" + login.strip() + "\".");
        } else {
            Optional<String> done = patientPost.run(formToken, () -> {
                Optional<String> wrong = turns.giveMakeUp(person.get().id(), reason, me.id());
                wrong.ifPresent(says -> errors.put("reason", says));
                return wrong.isPresent() ? null : PATH;
            });
            if (done.isPresent()) {
                return "redirect:" + done.get();
            }
        }
        response.setStatus(HttpStatus.UNPROCESSABLE_CONTENT.value());
        return page(me, login, reason, errors, model);
    }

    @GetMapping(PATH + "/{makeUp}/withdraw")
    String ask(@PathVariable UUID makeUp, @AuthenticationPrincipal SignedInPerson me, Model model) {
        return one(found(makeUp), me, "", Map.of(), model);
    }

    @PostMapping(PATH + "/{makeUp}/withdraw")
    String withdraw(
            @PathVariable UUID makeUp,
            @RequestParam(required = false) @Nullable String formToken,
            @RequestParam(defaultValue = "") String reason,
            @AuthenticationPrincipal SignedInPerson me,
            HttpServletResponse response,
            Model model) {
        found(makeUp);
        Map<String, String> errors = new LinkedHashMap<>();
        Optional<String> done = patientPost.run(formToken, () -> {
            Optional<String> wrong = turns.withdraw(makeUp, reason, me.id());
            wrong.ifPresent(says -> errors.put("reason", says));
            return wrong.isPresent() ? null : PATH;
        });
        if (done.isPresent()) {
            return "redirect:" + done.get();
        }
        response.setStatus(HttpStatus.UNPROCESSABLE_CONTENT.value());
        return one(found(makeUp), me, reason, errors, model);
    }

    private MakeUp found(UUID id) {
        return turns.makeUp(id).orElseThrow(() -> new NotFoundException("make-up"));
    }

    private String page(SignedInPerson me, String login, String reason, Map<String, String> errors, Model model) {
        List<MakeUp> makeUps = turns.makeUps(DAYS);
        List<PersonId> whose = makeUps.stream().map(MakeUp::person).distinct().toList();
        if (!whose.isEmpty()) {
            looks.looked(me.id(), Sight.TURNS, "make-ups", whose);
        }
        List<Line> lines = makeUps.stream().map(this::line).toList();
        long open = lines.stream().filter(Line::stands).count();
        model.addAttribute("standing", lines.stream().filter(Line::stands).toList());
        model.addAttribute("over", lines.stream().filter(line -> !line.stands()).toList());
        model.addAttribute(
                "headline",
                open == 0
                        ? "Nobody has a make-up to use"
                        : open == 1 ? "1 make-up can be used" : open + " make-ups can be used");
        model.addAttribute("login", login);
        model.addAttribute("reason", reason);
        model.addAttribute("errors", errors);
        return "booking/make-ups";
    }

    private String one(MakeUp makeUp, SignedInPerson me, String reason, Map<String, String> errors, Model model) {
        looks.looked(me.id(), Sight.TURNS, makeUp.id().toString(), List.of(makeUp.person()));
        model.addAttribute("line", line(makeUp));
        model.addAttribute("reason", reason);
        model.addAttribute("errors", errors);
        return "booking/make-up-withdraw";
    }

    private Line line(MakeUp one) {
        return new Line(
                one.id().toString(),
                people.printedName(one.person()),
                one.person().toString(),
                "given " + labTime.full(one.grantedAt()) + " by " + people.printedName(one.grantedBy()),
                why(one),
                one.stands() ? "valid" : "none",
                words(one),
                one.stands());
    }

    private String why(MakeUp one) {
        String lost = title(one.lost());
        return (one.reason().isEmpty() ? "no reason kept" : one.reason()) + (lost.isEmpty() ? "" : " (" + lost + ")");
    }

    private String words(MakeUp one) {
        if (one.withdrawn() != null) {
            return "withdrawn" + (one.withdrawn().isEmpty() ? "" : ": " + one.withdrawn());
        }
        if (one.stands()) {
            return "until " + labTime.day(one.validUntil());
        }
        return one.usedBy() == null ? "ended " + labTime.day(one.validUntil()) : "used for " + title(one.usedBy());
    }

    private String title(@Nullable BookingId id) {
        return id == null ? "" : bookings.find(id).map(own::title).orElse("");
    }
}
