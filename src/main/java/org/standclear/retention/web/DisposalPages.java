package org.standclear.retention.web;

import jakarta.servlet.http.HttpServletResponse;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.util.Map;
import java.util.Optional;
import java.util.UUID;
import java.util.concurrent.atomic.AtomicReference;
import org.apache.commons.csv.CSVFormat;
import org.apache.commons.csv.CSVPrinter;
import org.jspecify.annotations.Nullable;
import org.springframework.dao.DuplicateKeyException;
import org.springframework.http.HttpHeaders;
import org.springframework.http.HttpStatus;
import org.springframework.security.core.annotation.AuthenticationPrincipal;
import org.springframework.stereotype.Controller;
import org.springframework.ui.Model;
import org.springframework.web.bind.annotation.GetMapping;
import org.springframework.web.bind.annotation.PathVariable;
import org.springframework.web.bind.annotation.PostMapping;
import org.springframework.web.bind.annotation.RequestParam;
import org.standclear.platform.forms.PostOnce;
import org.standclear.platform.security.SignedInPerson;
import org.standclear.platform.web.NotFoundException;
import org.standclear.retention.Disposals;
import org.standclear.retention.Disposals.LogLine;
import org.standclear.retention.Disposals.Outcome;
import org.standclear.retention.Disposals.Preview;

/** What is due, the month's list and how far it is, and the disposal log. */
@Controller
class DisposalPages {

    private static final String ADDRESS = "/retention/due";

    private final Disposals disposals;
    private final DisposalViews views;
    private final PostOnce once;

    DisposalPages(Disposals disposals, DisposalViews views, PostOnce once) {
        this.disposals = disposals;
        this.views = views;
        this.once = once;
    }

    @GetMapping(ADDRESS)
    String due(@AuthenticationPrincipal SignedInPerson me, Model model) {
        return due(Map.of(), me, model);
    }

    private String due(Map<String, String> errors, SignedInPerson me, Model model) {
        model.addAttribute("view", views.due(disposals.preview(), me));
        model.addAttribute("lists", views.lists());
        model.addAttribute("errors", errors);
        return "retention/due";
    }

    @GetMapping(ADDRESS + "/confirm")
    String confirm(@AuthenticationPrincipal SignedInPerson me, HttpServletResponse response, Model model) {
        Preview preview = disposals.preview();
        if (preview.records() == 0 || preview.approved() != null) {
            response.setStatus(HttpStatus.UNPROCESSABLE_CONTENT.value());
            return due(Map.of("", "There is nothing to approve now."), me, model);
        }
        model.addAttribute("view", views.due(preview, me));
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

    @GetMapping("/retention/lists/{list}")
    String list(@PathVariable UUID list, Model model) {
        model.addAttribute(
                "view", views.list(disposals.find(list).orElseThrow(() -> new NotFoundException("disposal list"))));
        return "retention/list";
    }

    @GetMapping("/retention/log")
    String log(Model model) {
        model.addAttribute("lines", views.log(disposals.log()));
        return "retention/log";
    }

    @GetMapping("/retention/log.csv")
    void csv(HttpServletResponse response) throws IOException {
        response.setContentType("text/csv");
        response.setCharacterEncoding(StandardCharsets.UTF_8.name());
        response.setHeader(HttpHeaders.CONTENT_DISPOSITION, "attachment; filename=\"disposal-log.csv\"");
        try (CSVPrinter csv = new CSVPrinter(response.getWriter(), CSVFormat.RFC4180)) {
            csv.printRecord(DisposalViews.COLUMNS);
            for (LogLine line : disposals.log()) {
                csv.printRecord(views.columns(line));
            }
        }
    }
}
