package org.standclear.message.web;

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
import org.springframework.web.bind.annotation.ModelAttribute;
import org.springframework.web.bind.annotation.PostMapping;
import org.springframework.web.bind.annotation.RequestParam;
import org.standclear.message.Messages;
import org.standclear.message.Messages.Kept;
import org.standclear.message.Messages.Standing;
import org.standclear.message.Messages.Wishes;
import org.standclear.message.Messages.Wrong;
import org.standclear.platform.forms.PostOnce;
import org.standclear.platform.lab.LabScope;
import org.standclear.platform.lab.Labs;
import org.standclear.platform.security.Role;
import org.standclear.platform.security.SignedInPerson;
import org.standclear.platform.time.LabTime;

/** A person's messages, and how the person wants them by e-mail. */
@Controller
class MessagePages {

    private static final String PATH = "/me/messages";
    private static final int SHOWN = 30;

    private final Messages messages;
    private final PostOnce postOnce;
    private final Labs labs;
    private final LabTime labTime;

    MessagePages(Messages messages, PostOnce postOnce, Labs labs, LabTime labTime) {
        this.messages = messages;
        this.postOnce = postOnce;
        this.labs = labs;
        this.labTime = labTime;
    }

    /** A message on the page. */
    record Line(String when, String subject, List<String> lines, String href, boolean fresh, String mail) {}

    /** A state of the outbox, for the administrator. */
    record OutboxLine(String words, int count, String oldest, String error) {}

    @GetMapping(PATH)
    String list(
            @RequestParam(required = false) @Nullable UUID before,
            @AuthenticationPrincipal SignedInPerson me,
            Model model) {
        WishesForm form = WishesForm.of(messages.wishesOf(me.id()).orElse(Wishes.plain("")));
        List<Kept> found =
                before == null ? messages.of(me.id(), SHOWN + 1) : messages.before(me.id(), before, SHOWN + 1);
        String page = page(me, found, form, Map.of(), model);
        messages.read(me.id(), found.stream().limit(SHOWN).map(Kept::id).toList());
        return page;
    }

    @PostMapping(PATH)
    String wish(
            @ModelAttribute WishesForm form,
            @AuthenticationPrincipal SignedInPerson me,
            HttpServletResponse response,
            Model model) {
        Map<String, String> errors = new LinkedHashMap<>();
        Optional<Wishes> wishes = form.read(errors);
        if (wishes.isPresent()) {
            Optional<String> done = postOnce.run(form.formToken(), () -> {
                Optional<Wrong> wrong = messages.wish(me.id(), wishes.get());
                wrong.ifPresent(one -> errors.put(one.field(), one.says()));
                return wrong.isPresent() ? null : PATH;
            });
            if (done.isPresent()) {
                return "redirect:" + done.get();
            }
        }
        response.setStatus(HttpStatus.UNPROCESSABLE_CONTENT.value());
        return page(me, messages.of(me.id(), SHOWN + 1), form, errors, model);
    }

    /** One more than is shown was asked for, which tells whether there are older ones. */
    private String page(SignedInPerson me, List<Kept> found, WishesForm form, Map<String, String> errors, Model model) {
        List<Line> lines = found.stream().limit(SHOWN).map(this::line).toList();
        model.addAttribute("lines", lines);
        model.addAttribute("headline", headline(lines.size(), messages.unreadOf(me.id())));
        model.addAttribute(
                "older",
                found.size() > SHOWN ? PATH + "?before=" + found.get(SHOWN - 1).id() : null);
        model.addAttribute("form", form);
        model.addAttribute("errors", errors);
        model.addAttribute(
                "outbox",
                me.is(Role.ADMINISTRATOR)
                        ? messages.standing().stream().map(this::outbox).toList()
                        : List.of());
        return "message/list";
    }

    private static String headline(int all, long fresh) {
        if (all == 0) {
            return "No message yet";
        }
        return fresh == 0 ? "No new message" : fresh == 1 ? "1 new message" : fresh + " new messages";
    }

    private Line line(Kept one) {
        String whose =
                labs.find(one.lab()).map(lab -> lab.seenFrom(labs.theLab())).orElse("");
        return new Line(
                LabScope.in(one.lab(), () -> labTime.day(one.at()) + " " + labTime.time(one.at())) + whose,
                one.subject(),
                one.lines(),
                one.href(),
                one.readAt() == null,
                one.mail());
    }

    private OutboxLine outbox(Standing one) {
        String words = switch (one.state()) {
            case "WAITING" -> "wait to be sent";
            case "SENT" -> "sent";
            case "REFUSED" -> "refused by the mail server";
            default -> "not sent, too late";
        };
        return new OutboxLine(words, one.count(), labTime.full(one.oldest()), one.error() == null ? "" : one.error());
    }
}
