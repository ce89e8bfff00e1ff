package org.standclear.retention.web;

import jakarta.servlet.http.HttpServletResponse;
import java.util.Map;
import java.util.Optional;
import java.util.concurrent.atomic.AtomicReference;
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
import org.standclear.platform.access.AccessLog;
import org.standclear.platform.access.Sight;
import org.standclear.platform.forms.PostOnce;
import org.standclear.platform.retention.RecordKind;
import org.standclear.platform.security.SignedInPerson;
import org.standclear.platform.web.NotFoundException;
import org.standclear.retention.Disposals;
import org.standclear.retention.Disposals.Outcome;
import org.standclear.retention.Disposals.Preview;
import org.standclear.retention.DueRecords;

/** What is due, counted and one by one, and the form that approves the month's list. */
@Controller
class DisposalPages {

    private static final String ADDRESS = "/retention/due";

    private static final int PAGE = 50;

    private final Disposals disposals;
    private final DueRecords due;
    private final DueViews views;
    private final DisposalViews lists;
    private final AccessLog looks;
    private final PostOnce once;

    DisposalPages(
            Disposals disposals, DueRecords due, DueViews views, DisposalViews lists, AccessLog looks, PostOnce once) {
        this.disposals = disposals;
        this.due = due;
        this.views = views;
        this.lists = lists;
        this.looks = looks;
        this.once = once;
    }

    @GetMapping(ADDRESS)
    String due(@AuthenticationPrincipal SignedInPerson me, Model model) {
        return due(Map.of(), me, model);
    }

    private String due(Map<String, String> errors, SignedInPerson me, Model model) {
        model.addAttribute("view", views.due(disposals.overview(), me));
        model.addAttribute("lists", lists.lists());
        model.addAttribute("errors", errors);
        return "retention/due";
    }

    @GetMapping("/retention/kinds/{kind}")
    String kind(
            @PathVariable String kind,
            @RequestParam(required = false) @Nullable String after,
            @AuthenticationPrincipal SignedInPerson me,
            Model model) {
        RecordKind found = RecordKind.named(kind).orElseThrow(() -> new NotFoundException("kind of record"));
        looks.lookedAtMany(me.id(), Sight.DISPOSALS, found.name());
        model.addAttribute("kind", found);
        model.addAttribute("view", views.page(found, due.page(found, Positions.read(after), PAGE), after != null));
        return "retention/kind";
    }

    @GetMapping(ADDRESS + "/confirm")
    String confirm(@AuthenticationPrincipal SignedInPerson me, HttpServletResponse response, Model model) {
        Preview preview = disposals.preview();
        if (preview.records() == 0 || preview.approved() != null) {
            response.setStatus(HttpStatus.UNPROCESSABLE_CONTENT.value());
            return due(Map.of("", "There is nothing to approve now."), me, model);
        }
        model.addAttribute("view", views.approving(preview));
        model.addAttribute("hidden", Map.of("fingerprint", preview.fingerprint()));
        return "retention/due-confirm";
    }

    @PostMapping(ADDRESS)
    String approve(
            @RequestParam(required = false) @Nullable String formToken,
            @RequestParam(defaultValue = "") String fingerprint,
            @AuthenticationPrincipal SignedInPerson me,
            HttpServletResponse response,
            Model model) {
        AtomicReference<String> refused = new AtomicReference<>("");
        Optional<String> done = Optional.empty();
        try {
            done = once.run(formToken, () -> {
                Outcome outcome = disposals.approve(fingerprint, me.id());
                if (outcome instanceof Outcome.Approved approved) {
                    return "/retention/lists/" + approved.list();
                }
                refused.set(((Outcome.Refused) outcome).says());
                return null;
            });
        } catch (DuplicateKeyException sameMoment) {
            refused.set("Somebody else approved this month’s list at the same moment.");
        }
        if (done.isPresent()) {
            return "redirect:" + done.get();
        }
        response.setStatus(HttpStatus.UNPROCESSABLE_CONTENT.value());
        return due(Map.of("", String.valueOf(refused.get())), me, model);
    }
}
