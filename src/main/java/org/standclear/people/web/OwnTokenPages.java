package org.standclear.people.web;

import jakarta.servlet.http.HttpServletResponse;
import java.time.Clock;
import java.time.Instant;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.TreeMap;
import java.util.UUID;
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
import org.standclear.people.PersonalTokens;
import org.standclear.people.PersonalTokens.Created;
import org.standclear.people.PersonalTokens.PersonalToken;
import org.standclear.platform.forms.PostOnce;
import org.standclear.platform.security.SignedInPerson;
import org.standclear.platform.time.LabTime;
import org.standclear.platform.web.NotFoundException;

/** Everybody's own tokens for calls by programs. */
@Controller
class OwnTokenPages {

    private static final String PATH = "/me/tokens";

    /** In order, shortest first. */
    private static final Map<String, String> TERMS =
            new TreeMap<>(Map.of("007", "7 days", "030", "30 days", "120", "120 days, a term"));

    private final CurrentPassword current;
    private final PersonalTokens tokens;
    private final PostOnce postOnce;
    private final LabTime labTime;
    private final Clock clock;

    OwnTokenPages(CurrentPassword current, PersonalTokens tokens, PostOnce postOnce, LabTime labTime, Clock clock) {
        this.current = current;
        this.tokens = tokens;
        this.postOnce = postOnce;
        this.labTime = labTime;
        this.clock = clock;
    }

    /** A token in the list. */
    record TokenRow(UUID id, String name, String prefix, String used, String words, String state, boolean counts) {}

    @GetMapping(PATH)
    String list(@AuthenticationPrincipal SignedInPerson me, Model model) {
        return page(me, Map.of(), Map.of(), null, model);
    }

    @PostMapping(PATH)
    String create(
            @RequestParam Map<String, String> values,
            @AuthenticationPrincipal SignedInPerson me,
            HttpServletResponse response,
            Model model) {
        Typed typed = new Typed(values);
        AtomicReference<@Nullable String> text = new AtomicReference<>();
        Integer days = typed.whole("days");
        if (days != null && current.isRight(typed, me)) {
            Optional<String> done = postOnce.run(typed.raw("formToken"), () -> create(typed, days, me, text));
            if (done.isPresent() && text.get() == null) {
                return "redirect:" + done.get();
            }
        }
        if (text.get() == null) {
            response.setStatus(HttpStatus.UNPROCESSABLE_CONTENT.value());
        }
        return page(me, typed.errors(), text.get() == null ? values : Map.of(), text.get(), model);
    }

    /** The text goes onto this one page, and neither into an address nor into the session. */
    private @Nullable String create(Typed typed, int days, SignedInPerson me, AtomicReference<@Nullable String> text) {
        Created created = tokens.create(me.id(), typed.raw("name"), days);
        if (created instanceof Created.Refused refused) {
            typed.refuse(refused.field(), refused.says());
            return null;
        }
        text.set(((Created.Kept) created).text());
        return PATH;
    }

    @PostMapping(PATH + "/{token}/revoke")
    String revoke(
            @PathVariable UUID token,
            @RequestParam Map<String, String> values,
            @AuthenticationPrincipal SignedInPerson me) {
        if (tokens.of(me.id()).stream().noneMatch(own -> own.id().equals(token))) {
            throw new NotFoundException("token");
        }
        return "redirect:"
                + postOnce.run(values.getOrDefault("formToken", ""), () -> {
                            tokens.revoke(me.id(), token);
                            return PATH;
                        })
                        .orElse(PATH);
    }

    private String page(
            SignedInPerson me,
            Map<String, String> errors,
            Map<String, String> typed,
            @Nullable String text,
            Model model) {
        List<TokenRow> rows = tokens.of(me.id()).stream().map(this::row).toList();
        model.addAttribute("tokens", rows);
        model.addAttribute("counting", rows.stream().filter(TokenRow::counts).count());
        model.addAttribute("errors", errors);
        model.addAttribute("tokenName", typed.getOrDefault("name", ""));
        model.addAttribute("days", typed.getOrDefault("days", "030"));
        model.addAttribute("terms", TERMS);
        model.addAttribute("text", text);
        return "people/own-tokens";
    }

    private TokenRow row(PersonalToken token) {
        Instant used = token.lastUsedAt();
        Instant revoked = token.revokedAt();
        boolean counts = token.countsAt(clock.instant());
        return new TokenRow(
                token.id(),
                token.name(),
                token.prefix(),
                used == null ? "not used yet" : "last used " + labTime.full(used),
                revoked != null
                        ? "revoked " + labTime.full(revoked)
                        : (counts ? "until " : "expired ") + labTime.full(token.expiresAt()),
                revoked != null ? "cancelled" : counts ? "valid" : "expired",
                counts);
    }
}
