package org.standclear.run.web;

import jakarta.servlet.http.HttpServletResponse;
import java.util.Arrays;
import java.util.HashMap;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.concurrent.atomic.AtomicReference;
import java.util.function.Supplier;
import org.jspecify.annotations.Nullable;
import org.springframework.http.HttpStatus;
import org.springframework.security.core.annotation.AuthenticationPrincipal;
import org.springframework.stereotype.Controller;
import org.springframework.ui.Model;
import org.springframework.web.bind.annotation.PathVariable;
import org.springframework.web.bind.annotation.PostMapping;
import org.springframework.web.bind.annotation.RequestParam;
import org.springframework.web.servlet.mvc.support.RedirectAttributes;
import org.standclear.platform.forms.PostOnce;
import org.standclear.platform.ids.BookingId;
import org.standclear.platform.ids.CellId;
import org.standclear.platform.ids.PersonId;
import org.standclear.platform.security.SignedInPerson;
import org.standclear.run.CloseOutItem;
import org.standclear.run.ResetCause;
import org.standclear.run.RunLog;
import org.standclear.run.RunLog.Logged;

/** Logs start, passes, reset, finish and close-out from the bench screen. */
@Controller
class BenchRunActs {

    private final RunLog log;
    private final BenchScreens screens;
    private final BenchPages pages;
    private final PostOnce once;

    BenchRunActs(RunLog log, BenchScreens screens, BenchPages pages, PostOnce once) {
        this.log = log;
        this.screens = screens;
        this.pages = pages;
        this.once = once;
    }

    /** What every form of the bench carries. */
    record Act(CellId cell, @Nullable BookingId booking, SignedInPerson me, Map<String, String> fields) {}

    @PostMapping("/bench/{cell}/start")
    String start(
            @PathVariable CellId cell,
            @RequestParam BookingId booking,
            @RequestParam Map<String, String> fields,
            @AuthenticationPrincipal SignedInPerson me,
            HttpServletResponse response,
            Model model) {
        return act(
                new Act(cell, booking, me, fields),
                () -> log.start(booking, fields.getOrDefault("code", ""), me.id()),
                response,
                model);
    }

    @PostMapping("/bench/{cell}/passes")
    String pass(
            @PathVariable CellId cell,
            @RequestParam BookingId booking,
            @RequestParam Map<String, String> fields,
            @AuthenticationPrincipal SignedInPerson me,
            HttpServletResponse response,
            Model model) {
        return act(new Act(cell, booking, me, fields), () -> log.pass(booking, me.id()), response, model);
    }

    /** Staff say that they watched the first run. */
    @PostMapping("/bench/{cell}/watched")
    String watched(
            @PathVariable CellId cell,
            @RequestParam BookingId booking,
            @RequestParam Map<String, String> fields,
            @AuthenticationPrincipal SignedInPerson me,
            HttpServletResponse response,
            Model model) {
        Optional<PersonId> signer = BenchStages.id(fields.getOrDefault("signer", ""));
        return act(
                new Act(cell, booking, me, fields),
                () -> signer.isEmpty()
                        ? new Logged.Refused("signer", "Choose who watched it.")
                        : log.watched(booking, new RunLog.Witness(me.id(), signer.get(), fields.get("pin"))),
                response,
                model);
    }

    /** Without a booking it is a stop on a cell where nobody is booked now. */
    @PostMapping("/bench/{cell}/reset")
    String reset(
            @PathVariable CellId cell,
            @RequestParam(required = false) @Nullable BookingId booking,
            @RequestParam Map<String, String> fields,
            @AuthenticationPrincipal SignedInPerson me,
            HttpServletResponse response,
            RedirectAttributes flash,
            Model model) {
        Optional<ResetCause> cause = ResetCause.of(fields.getOrDefault("cause", ""));
        Optional<PersonId> signer = BenchStages.id(fields.getOrDefault("signer", ""));
        String next = act(
                new Act(cell, booking, me, fields),
                () -> {
                    if (cause.isEmpty() || signer.isEmpty()) {
                        return missing(cause.isEmpty());
                    }
                    RunLog.Witness witness = new RunLog.Witness(me.id(), signer.get(), fields.get("pin"));
                    return booking == null
                            ? log.resetAt(cell, cause.get(), "", witness)
                            : log.reset(booking, cause.get(), "", witness);
                },
                response,
                model);
        if (next.startsWith("redirect:")) {
            flash.addFlashAttribute("told", "Reset recorded.");
        }
        return next;
    }

    private static Logged missing(boolean cause) {
        return cause
                ? new Logged.Refused("cause", "Choose the cause. While it is not known the arm stays stopped.")
                : new Logged.Refused("signer", "Choose who records the reset.");
    }

    @PostMapping("/bench/{cell}/finish")
    String finish(
            @PathVariable CellId cell,
            @RequestParam BookingId booking,
            @RequestParam Map<String, String> fields,
            @AuthenticationPrincipal SignedInPerson me,
            HttpServletResponse response,
            Model model) {
        String passes = fields.getOrDefault("passes", "").strip();
        Optional<ResetCause> why = ResetCause.of(fields.getOrDefault("why", ""));
        return act(
                new Act(cell, booking, me, fields),
                () -> {
                    if (!passes.matches("[0-9]{1,6}")) {
                        return new Logged.Refused("passes", "How many passes were made? A whole number, 0 if none.");
                    }
                    int made = Integer.parseInt(passes);
                    return why.isPresent()
                            ? log.finishStopped(booking, made, why.get(), me.id())
                            : log.finish(booking, made, me.id());
                },
                response,
                model);
    }

    @PostMapping("/bench/{cell}/close-out")
    String closeOut(
            @PathVariable CellId cell,
            @RequestParam BookingId booking,
            @RequestParam Map<String, String> fields,
            @AuthenticationPrincipal SignedInPerson me,
            HttpServletResponse response,
            Model model) {
        String choice = fields.getOrDefault("choice", "");
        Optional<CloseOutItem> item = Arrays.stream(CloseOutItem.values())
                .filter(one -> one.choice(choice).isPresent())
                .findFirst();
        return act(
                new Act(cell, booking, me, fields),
                () -> item.map(due -> log.closeOut(booking, due, choice, me.id()))
                        .orElseGet(() -> new Logged.Refused("", "Tap one of the answers.")),
                response,
                model);
    }

    private String act(Act act, Supplier<Logged> work, HttpServletResponse response, Model model) {
        if (act.booking() != null) {
            screens.ofCell(act.cell(), act.booking(), act.me());
        }
        AtomicReference<Logged.Refused> refused = new AtomicReference<>();
        Optional<String> next = once.run(act.fields().get("formToken"), () -> {
            if (work.get() instanceof Logged.Refused no) {
                refused.set(no);
                return null;
            }
            return BenchListActs.address(act.cell());
        });
        if (next.isPresent()) {
            return "redirect:" + next.get();
        }
        response.setStatus(HttpStatus.UNPROCESSABLE_CONTENT.value());
        Map<String, String> typed = new HashMap<>(act.fields());
        typed.remove("pin");
        return pages.page(act.cell(), act.me(), errors(refused.get()), typed, model);
    }

    private static Map<String, String> errors(Logged.@Nullable Refused refused) {
        if (refused == null) {
            return Map.of();
        }
        boolean field = Set.of("cause", "signer", "pin", "passes", "why").contains(refused.code());
        return Map.of(field ? refused.code() : "", refused.says());
    }
}
