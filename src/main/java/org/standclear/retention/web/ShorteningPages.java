package org.standclear.retention.web;

import jakarta.servlet.http.HttpServletResponse;
import java.util.LinkedHashMap;
import java.util.Map;
import java.util.Optional;
import java.util.UUID;
import java.util.function.Supplier;
import org.jspecify.annotations.Nullable;
import org.springframework.dao.DuplicateKeyException;
import org.springframework.http.HttpStatus;
import org.springframework.security.core.annotation.AuthenticationPrincipal;
import org.springframework.stereotype.Controller;
import org.springframework.ui.Model;
import org.springframework.web.bind.annotation.GetMapping;
import org.springframework.web.bind.annotation.PathVariable;
import org.springframework.web.bind.annotation.PostMapping;
import org.springframework.web.bind.annotation.RequestParam;
import org.standclear.people.People;
import org.standclear.platform.forms.PostOnce;
import org.standclear.platform.security.Role;
import org.standclear.platform.security.SignedInPerson;
import org.standclear.platform.time.LabTime;
import org.standclear.platform.web.NotFoundException;
import org.standclear.retention.DueRecords;
import org.standclear.retention.KeepingRules;
import org.standclear.retention.Shortenings;
import org.standclear.retention.Shortenings.Decided;
import org.standclear.retention.Shortenings.Proposal;

/** A shorter time of keeping as one person proposed it, and a second person's decision. */
@Controller
class ShorteningPages {

    static final String ADDRESS = "/retention/shortenings/";

    private final Shortenings shortenings;
    private final KeepingRules rules;
    private final DueRecords due;
    private final People people;
    private final LabTime labTime;
    private final PostOnce once;

    ShorteningPages(
            Shortenings shortenings,
            KeepingRules rules,
            DueRecords due,
            People people,
            LabTime labTime,
            PostOnce once) {
        this.shortenings = shortenings;
        this.rules = rules;
        this.due = due;
        this.people = people;
        this.labTime = labTime;
        this.once = once;
    }

    /**
     * A proposal in words.
     *
     * @param records how many would be due at once; empty when it is decided on
     * @param whyNot why the reader may not approve it; empty when nothing speaks against it
     */
    record View(
            String id,
            String headline,
            String before,
            String after,
            String reason,
            String proposed,
            String decided,
            String records,
            boolean open,
            String whyNot) {}

    @GetMapping(ADDRESS + "{shortening}")
    String show(@PathVariable UUID shortening, @AuthenticationPrincipal SignedInPerson me, Model model) {
        return page(found(shortening), "", Map.of(), me, model);
    }

    @PostMapping(ADDRESS + "{shortening}/approve")
    String approve(
            @PathVariable UUID shortening,
            @RequestParam(required = false) @Nullable String formToken,
            @AuthenticationPrincipal SignedInPerson me,
            HttpServletResponse response,
            Model model) {
        Map<String, String> errors = new LinkedHashMap<>();
        Optional<String> done = decided(
                shortening,
                formToken,
                () -> shortenings.approve(found(shortening).id(), me.id()),
                errors);
        return done.orElseGet(() -> refused(shortening, "", errors, me, response, model));
    }

    @PostMapping(ADDRESS + "{shortening}/reject")
    String reject(
            @PathVariable UUID shortening,
            @RequestParam(required = false) @Nullable String formToken,
            @RequestParam(defaultValue = "") String reason,
            @AuthenticationPrincipal SignedInPerson me,
            HttpServletResponse response,
            Model model) {
        Map<String, String> errors = new LinkedHashMap<>(HoldViews.wrong("reason", reason));
        Optional<String> done = errors.isEmpty()
                ? decided(
                        shortening,
                        formToken,
                        () -> shortenings.reject(found(shortening).id(), HoldForm.kept(reason), me.id()),
                        errors)
                : Optional.empty();
        return done.orElseGet(() -> refused(shortening, reason, errors, me, response, model));
    }

    private Optional<String> decided(
            UUID shortening, @Nullable String formToken, Supplier<Optional<String>> act, Map<String, String> errors) {
        try {
            return once.run(formToken, () -> {
                        Optional<String> refused = act.get();
                        refused.ifPresent(says -> errors.put("", says));
                        return refused.isPresent() ? null : ADDRESS + shortening;
                    })
                    .map(next -> "redirect:" + next);
        } catch (DuplicateKeyException sameMoment) {
            errors.put("", "Another time was put in force at the same moment.");
            return Optional.empty();
        }
    }

    private String refused(
            UUID shortening,
            String reason,
            Map<String, String> errors,
            SignedInPerson me,
            HttpServletResponse response,
            Model model) {
        response.setStatus(HttpStatus.UNPROCESSABLE_CONTENT.value());
        return page(found(shortening), reason, errors, me, model);
    }

    private Proposal found(UUID shortening) {
        return shortenings.find(shortening).orElseThrow(() -> new NotFoundException("proposal"));
    }

    private String page(Proposal proposal, String reason, Map<String, String> errors, SignedInPerson me, Model model) {
        model.addAttribute("view", view(proposal, me));
        model.addAttribute("mayDecide", me.is(Role.ADMINISTRATOR) || me.is(Role.INSTRUCTOR));
        model.addAttribute("reason", reason);
        model.addAttribute("errors", errors);
        return "retention/shortening";
    }

    private View view(Proposal proposal, SignedInPerson me) {
        Decided decided = proposal.decided();
        String words = "“" + proposal.kind().words() + "”";
        return new View(
                proposal.id().toString(),
                decided == null
                        ? "Keep " + words + " for " + proposal.time().words() + " only?"
                        : "A shorter time for " + words + " was " + (decided.approved() ? "approved" : "put aside"),
                rules.inForce(proposal.kind()).time().words(),
                proposal.time().words(),
                proposal.reason(),
                people.printedName(proposal.by()) + ", " + labTime.full(proposal.at()),
                decided == null
                        ? ""
                        : people.printedName(decided.by()) + ", " + labTime.full(decided.at())
                                + (decided.reason().isEmpty() ? "" : ": " + decided.reason()),
                decided == null ? DueViews.atOnce(due.wouldBeDue(proposal.kind(), proposal.time())) : "",
                decided == null,
                shortenings.whyNotApprove(proposal, me.id()).orElse(""));
    }
}
