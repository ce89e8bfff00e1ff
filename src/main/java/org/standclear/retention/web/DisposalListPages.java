package org.standclear.retention.web;

import jakarta.servlet.http.HttpServletResponse;
import java.util.LinkedHashMap;
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
import org.standclear.platform.access.AccessLog;
import org.standclear.platform.access.Sight;
import org.standclear.platform.forms.PostOnce;
import org.standclear.platform.security.SignedInPerson;
import org.standclear.platform.web.NotFoundException;
import org.standclear.retention.Disposals;
import org.standclear.retention.Disposals.MonthList;

/** An approved list: when it is carried out, what stands on it, and stopping it. */
@Controller
class DisposalListPages {

    private static final int PAGE = 50;

    private final Disposals disposals;
    private final DisposalViews views;
    private final AccessLog looks;
    private final PostOnce once;

    DisposalListPages(Disposals disposals, DisposalViews views, AccessLog looks, PostOnce once) {
        this.disposals = disposals;
        this.views = views;
        this.looks = looks;
        this.once = once;
    }

    @GetMapping("/retention/lists/{list}")
    String list(
            @PathVariable UUID list,
            @RequestParam(defaultValue = "0") int after,
            @AuthenticationPrincipal SignedInPerson me,
            Model model) {
        MonthList found = found(list);
        looks.lookedAtMany(me.id(), Sight.DISPOSALS, list.toString());
        model.addAttribute("view", views.list(found));
        model.addAttribute("standing", views.standing(found, disposals.standing(list, after, PAGE + 1), PAGE));
        model.addAttribute("mayStop", found.finishedAt() == null && views.mayStop(me));
        return "retention/list";
    }

    private MonthList found(UUID list) {
        return disposals.find(list).orElseThrow(() -> new NotFoundException("disposal list"));
    }

    @GetMapping("/retention/lists/{list}/stop")
    String stopping(@PathVariable UUID list, Model model) {
        return stopping(found(list), "", Map.of(), model);
    }

    private String stopping(MonthList list, String reason, Map<String, String> errors, Model model) {
        model.addAttribute("view", views.list(list));
        model.addAttribute("reason", reason);
        model.addAttribute("errors", errors);
        return "retention/list-stop";
    }

    @PostMapping("/retention/lists/{list}/stop")
    String stop(
            @PathVariable UUID list,
            @RequestParam(required = false) @Nullable String formToken,
            @RequestParam(defaultValue = "") String reason,
            @AuthenticationPrincipal SignedInPerson me,
            HttpServletResponse response,
            Model model) {
        MonthList found = found(list);
        Map<String, String> errors = new LinkedHashMap<>(HoldViews.wrong("reason", reason));
        Optional<String> done = errors.isEmpty()
                ? once.run(formToken, () -> {
                    Optional<String> refused = disposals.stop(list, HoldForm.kept(reason), me.id());
                    refused.ifPresent(says -> errors.put("", says));
                    return refused.isPresent() ? null : "/retention/lists/" + list;
                })
                : Optional.empty();
        if (done.isPresent()) {
            return "redirect:" + done.get();
        }
        response.setStatus(HttpStatus.UNPROCESSABLE_CONTENT.value());
        return stopping(found, reason, errors, model);
    }
}
