package org.standclear.report.web;

import jakarta.servlet.http.HttpServletResponse;
import java.util.LinkedHashMap;
import java.util.Map;
import java.util.Objects;
import java.util.Optional;
import java.util.concurrent.atomic.AtomicReference;
import org.springframework.http.HttpStatus;
import org.springframework.security.core.annotation.AuthenticationPrincipal;
import org.springframework.stereotype.Controller;
import org.springframework.ui.Model;
import org.springframework.web.bind.annotation.GetMapping;
import org.springframework.web.bind.annotation.PostMapping;
import org.springframework.web.bind.annotation.RequestParam;
import org.standclear.platform.forms.PostOnce;
import org.standclear.platform.security.SignedInPerson;
import org.standclear.platform.text.PlainText;
import org.standclear.report.WeekExceptions;

/** The rules by which exceptions are chosen: listed, and changed with a reason. */
@Controller
class ExceptionRulePages {

    private static final int LONGEST_REASON = 300;
    private static final Map<String, String> ASKED = new LinkedHashMap<>();

    static {
        ASKED.put("true", "yes");
        ASKED.put("false", "no");
    }

    private final WeekExceptions exceptions;
    private final PostOnce once;

    ExceptionRulePages(WeekExceptions exceptions, PostOnce once) {
        this.exceptions = exceptions;
        this.once = once;
    }

    @GetMapping("/exceptions/rules")
    String rules(Model model) {
        return page(Map.of(), Map.of(), model);
    }

    private String page(Map<String, String> errors, Map<String, String> typed, Model model) {
        Map<String, String> choices = new LinkedHashMap<>();
        exceptions.rules().forEach(rule -> choices.put(rule.code(), rule.title() + ", in " + rule.unit()));
        model.addAttribute("rules", exceptions.rules());
        model.addAttribute("choices", choices);
        model.addAttribute("asked", ASKED);
        model.addAttribute("errors", errors);
        model.addAttribute("typed", typed);
        return "report/exception-rules";
    }

    @PostMapping("/exceptions/rules")
    String change(
            @RequestParam Map<String, String> fields,
            @AuthenticationPrincipal SignedInPerson me,
            HttpServletResponse response,
            Model model) {
        AtomicReference<Map<String, String>> errors = new AtomicReference<>(Map.of());
        Optional<String> next = Optional.empty();
        PlainText.Checked reason = PlainText.check(fields.get("reason"), LONGEST_REASON);
        if (reason instanceof PlainText.Fine fine) {
            next = once.run(fields.get("formToken"), () -> {
                WeekExceptions.Changed changed = exceptions.change(
                        fields.getOrDefault("code", ""),
                        "true".equals(fields.get("active")),
                        number(fields.getOrDefault("threshold", "")),
                        fine.text(),
                        me.id());
                if (changed instanceof WeekExceptions.Changed.Refused refused) {
                    errors.set(Map.of(refused.field(), refused.says()));
                    return null;
                }
                return "/exceptions/rules";
            });
        } else {
            errors.set(Map.of("reason", "Say why; it stays in the record. " + ((PlainText.Refused) reason).says()));
        }
        if (next.isPresent()) {
            return "redirect:" + next.get();
        }
        response.setStatus(HttpStatus.UNPROCESSABLE_CONTENT.value());
        return page(Objects.requireNonNull(errors.get()), fields, model);
    }

    /** What is no number is refused as one that is too small. */
    private static int number(String typed) {
        return typed.strip().matches("[0-9]{1,5}") ? Integer.parseInt(typed.strip()) : 0;
    }
}
