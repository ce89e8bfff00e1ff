package org.standclear.retention.web;

import jakarta.servlet.http.HttpServletResponse;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
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

/** How long a kind of record is kept: what holds, its history, and the form that changes it after asking once more. */
@Controller
class KeepingRulePages {

    private static final int SHOWN = 20;

    private final KeepingRules rules;
    private final DueRecords due;
    private final People people;
    private final LabTime labTime;
    private final PostOnce once;

    KeepingRulePages(KeepingRules rules, DueRecords due, People people, LabTime labTime, PostOnce once) {
        this.rules = rules;
        this.due = due;
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
        int records = due.wouldBeDue(found, time.get());
        model.addAttribute("kind", found);
        model.addAttribute("headline", "Keep “" + found.words() + "” " + forTime(time.get()) + "?");
        model.addAttribute(
                "text",
                "Until now: " + now.words() + ". With the new time " + counted(records)
                        + " due at once. What is disposed of cannot be brought back; an administrator still approves each "
                        + "month’s list first.");
        model.addAttribute("action", "/retention/rules/" + found.name());
        model.addAttribute("hidden", form.hidden());
        return "retention/rule-confirm";
    }

    private static String forTime(KeepingTime time) {
        return time.period() == null ? "for good" : "for " + time.words();
    }

    private static String counted(int records) {
        return records == 0 ? "no record is" : records == 1 ? "one record is" : records + " records are";
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
            Optional<String> done = changed(found, time.get(), form, me);
            if (done.isPresent()) {
                return "redirect:" + done.get();
            }
        }
        response.setStatus(HttpStatus.UNPROCESSABLE_CONTENT.value());
        return page(found, form, errors, model);
    }

    private Optional<String> changed(RecordKind kind, KeepingTime time, RuleForm form, SignedInPerson me) {
        String address = "/retention/rules/" + kind.name();
        try {
            return once.run(form.formToken(), () -> {
                if (!rules.change(kind, time, form.seenNumber(), me.id(), form.reasonKept())) {
                    throw stale(kind, time, address);
                }
                return address;
            });
        } catch (DuplicateKeyException sameMoment) {
            throw stale(kind, time, address);
        }
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
                        people.printedName(change.by()),
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
        return "retention/rule";
    }

    private static RecordKind found(String kind) {
        return RecordKind.named(kind).orElseThrow(() -> new NotFoundException("kind of record"));
    }
}
