package org.standclear.retention.web;

import jakarta.servlet.http.HttpServletResponse;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.jspecify.annotations.Nullable;
import org.springframework.dao.DuplicateKeyException;
import org.springframework.http.HttpStatus;
import org.springframework.security.core.annotation.AuthenticationPrincipal;
import org.springframework.stereotype.Controller;
import org.springframework.ui.Model;
import org.springframework.web.bind.annotation.GetMapping;
import org.springframework.web.bind.annotation.ModelAttribute;
import org.springframework.web.bind.annotation.PathVariable;
import org.springframework.web.bind.annotation.PostMapping;
import org.standclear.people.People;
import org.standclear.platform.forms.PostOnce;
import org.standclear.platform.ids.PersonId;
import org.standclear.platform.retention.RecordKind;
import org.standclear.platform.security.SignedInPerson;
import org.standclear.platform.time.LabTime;
import org.standclear.platform.web.NotFoundException;
import org.standclear.platform.web.StaleFormException;
import org.standclear.retention.DefaultTimes;
import org.standclear.retention.DueRecords;
import org.standclear.retention.KeepingRule;
import org.standclear.retention.KeepingRules;
import org.standclear.retention.KeepingTime;
import org.standclear.retention.Shortenings;
import org.standclear.retention.Shortenings.Proposed;

/** How long a kind of record is kept: what holds, its history, and the form that changes it after asking once more. */
@Controller
class KeepingRulePages {

    private static final int SHOWN = 20;

    private final KeepingRules rules;
    private final DueRecords due;
    private final Shortenings shortenings;
    private final People people;
    private final LabTime labTime;
    private final PostOnce once;

    KeepingRulePages(
            KeepingRules rules,
            DueRecords due,
            Shortenings shortenings,
            People people,
            LabTime labTime,
            PostOnce once) {
        this.rules = rules;
        this.due = due;
        this.shortenings = shortenings;
        this.people = people;
        this.labTime = labTime;
        this.once = once;
    }

    /** A line of the history. */
    record Changed(String when, String who, String time, String reason) {}

    @GetMapping("/retention/rules/{kind}")
    String show(@PathVariable String kind, Model model) {
        RecordKind found = found(kind);
        return page(found, RuleForm.of(rules.inForce(found)), Map.of(), model);
    }

    @GetMapping("/retention/rules/{kind}/confirm")
    String confirm(
            @PathVariable String kind, @ModelAttribute RuleForm form, HttpServletResponse response, Model model) {
        RecordKind found = found(kind);
        Map<String, String> errors = new LinkedHashMap<>();
        Optional<KeepingTime> time = form.read(errors);
        KeepingTime now = rules.inForce(found).time();
        if (time.isPresent() && time.get().equals(now)) {
            errors.put("", "That is what holds already; nothing would change.");
        }
        if (time.isEmpty() || !errors.isEmpty()) {
            response.setStatus(HttpStatus.UNPROCESSABLE_CONTENT.value());
            return page(found, form, errors, model);
        }
        boolean shorter = time.get().isShorterThan(now);
        model.addAttribute("kind", found);
        model.addAttribute("verb", shorter ? "Propose this time" : "Put this time in force");
        model.addAttribute("headline", "Keep “" + found.words() + "” " + forTime(time.get()) + "?");
        model.addAttribute(
                "text",
                "Until now: " + now.words() + ". With the new time "
                        + DueViews.atOnce(due.wouldBeDue(found, time.get()))
                        + ". What is disposed of cannot be brought back; an administrator still approves each "
                        + "month’s list first."
                        + (shorter
                                ? " It is shorter than now: a second person has to approve it before it holds."
                                : ""));
        model.addAttribute("action", "/retention/rules/" + found.name());
        model.addAttribute("hidden", form.hidden());
        return "retention/rule-confirm";
    }

    private static String forTime(KeepingTime time) {
        return time.period() == null ? "for good" : "for " + time.words();
    }

    @PostMapping("/retention/rules/{kind}")
    String change(
            @PathVariable String kind,
            @ModelAttribute RuleForm form,
            @AuthenticationPrincipal SignedInPerson me,
            HttpServletResponse response,
            Model model) {
        RecordKind found = found(kind);
        Map<String, String> errors = new LinkedHashMap<>();
        Optional<KeepingTime> time = form.read(errors);
        if (time.isPresent()) {
            Optional<String> done = changed(found, time.get(), form, me, errors);
            if (done.isPresent()) {
                return "redirect:" + done.get();
            }
        }
        response.setStatus(HttpStatus.UNPROCESSABLE_CONTENT.value());
        return page(found, form, errors, model);
    }

    private Optional<String> changed(
            RecordKind kind, KeepingTime time, RuleForm form, SignedInPerson me, Map<String, String> errors) {
        String address = "/retention/rules/" + kind.name();
        boolean shorter = time.isShorterThan(rules.inForce(kind).time());
        try {
            return once.run(form.formToken(), () -> {
                if (shorter) {
                    return proposed(kind, time, form, me, errors);
                }
                if (!rules.change(kind, time, form.seenNumber(), me.id(), form.reasonKept())) {
                    throw stale(kind, time, address);
                }
                return address;
            });
        } catch (DuplicateKeyException sameMoment) {
            throw stale(kind, time, address);
        }
    }

    private @Nullable String proposed(
            RecordKind kind, KeepingTime time, RuleForm form, SignedInPerson me, Map<String, String> errors) {
        Proposed outcome = shortenings.propose(kind, time, form.seenNumber(), me.id(), form.reasonKept());
        if (outcome instanceof Proposed.Stale) {
            throw stale(kind, time, "/retention/rules/" + kind.name());
        }
        if (outcome instanceof Proposed.Refused refused) {
            errors.put("", refused.says());
            return null;
        }
        return ShorteningPages.ADDRESS + ((Proposed.Waits) outcome).id();
    }

    private StaleFormException stale(RecordKind kind, KeepingTime time, String address) {
        return new StaleFormException(
                "how long is kept: " + kind.words(),
                address,
                Map.of("Kept", time.words()),
                Map.of("Kept", rules.inForce(kind).time().words()));
    }

    private String page(RecordKind kind, RuleForm form, Map<String, String> errors, Model model) {
        KeepingRule now = rules.inForce(kind);
        List<Changed> changes = rules.changes(kind, SHOWN).stream()
                .map(change -> new Changed(
                        labTime.full(change.at()),
                        who(change),
                        change.rule().time().words(),
                        change.reason()))
                .toList();
        model.addAttribute("kind", kind);
        model.addAttribute("holds", now.time().words());
        model.addAttribute("standard", DefaultTimes.of(kind).words());
        model.addAttribute("source", DefaultTimes.source(kind));
        model.addAttribute("form", form);
        model.addAttribute("ways", RuleForm.ways());
        model.addAttribute("units", RuleForm.units());
        model.addAttribute("errors", errors);
        model.addAttribute("changes", changes);
        model.addAttribute(
                "proposals",
                shortenings.open().stream().filter(one -> one.kind() == kind).toList());
        return "retention/rule";
    }

    private String who(KeepingRules.Change change) {
        PersonId approver = change.approvedBy();
        return people.printedName(change.by())
                + (approver == null ? "" : ", approved by " + people.printedName(approver));
    }

    private static RecordKind found(String kind) {
        return RecordKind.named(kind).orElseThrow(() -> new NotFoundException("kind of record"));
    }
}
