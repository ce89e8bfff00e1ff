package org.standclear.run.web;

import jakarta.servlet.http.HttpServletResponse;
import java.time.Instant;
import java.util.HashMap;
import java.util.Map;
import java.util.Optional;
import org.jspecify.annotations.Nullable;
import org.slf4j.Logger;
import org.slf4j.LoggerFactory;
import org.springframework.dao.TransientDataAccessException;
import org.springframework.http.HttpStatus;
import org.springframework.security.core.annotation.AuthenticationPrincipal;
import org.springframework.stereotype.Controller;
import org.springframework.ui.Model;
import org.springframework.web.bind.annotation.PathVariable;
import org.springframework.web.bind.annotation.PostMapping;
import org.springframework.web.bind.annotation.RequestParam;
import org.springframework.web.servlet.mvc.support.RedirectAttributes;
import org.standclear.cell.CellStates;
import org.standclear.cell.Cells;
import org.standclear.platform.forms.InvalidFormTokenException;
import org.standclear.platform.forms.Patience;
import org.standclear.platform.forms.PostOnce;
import org.standclear.platform.ids.BookingId;
import org.standclear.platform.ids.CellId;
import org.standclear.platform.security.SignedInPerson;
import org.standclear.platform.text.PlainText;
import org.standclear.platform.time.LabTime;
import org.standclear.platform.web.NotFoundException;
import org.standclear.run.RunEvent;
import org.standclear.run.RunLog;
import org.standclear.signoff.LapseRule;
import org.standclear.signoff.Releases;

/** Stops: logged by one tap, whatever else is wrong with the form; holds and tags by anyone; a release taken back. */
@Controller
class BenchStopActs {

    private static final Logger LOG = LoggerFactory.getLogger(BenchStopActs.class);
    private static final int LONGEST_REASON = 300;

    private final RunLog log;
    private final Cells cells;
    private final CellStates states;
    private final Releases releases;
    private final BenchScreens screens;
    private final BenchPages pages;
    private final PostOnce once;
    private final LabTime labTime;

    BenchStopActs(
            RunLog log,
            Cells cells,
            CellStates states,
            Releases releases,
            BenchScreens screens,
            BenchPages pages,
            PostOnce once,
            LabTime labTime) {
        this.log = log;
        this.cells = cells;
        this.states = states;
        this.releases = releases;
        this.screens = screens;
        this.pages = pages;
        this.once = once;
        this.labTime = labTime;
    }

    @PostMapping("/bench/{cell}/stop")
    String stop(
            @PathVariable CellId cell,
            @RequestParam(required = false) @Nullable String kind,
            @RequestParam(required = false) @Nullable String formToken,
            @AuthenticationPrincipal SignedInPerson me,
            RedirectAttributes flash) {
        mustExist(cell);
        RunEvent.Kind stop = "arm".equals(kind) ? RunEvent.Kind.PROTECTIVE_STOP : RunEvent.Kind.E_STOP_PRESS;
        Optional<Instant> before = once.actedAt(formToken);
        boolean logged = logOnce(cell, stop, formToken, me);
        flash.addFlashAttribute(
                "told",
                logged
                        ? before.map(at -> "This tap was already logged at " + labTime.lately(at)
                                        + ". If it was another stop, tap once more.")
                                .orElse("Logged: " + stop.words() + ". It costs nothing.")
                        : "Not on record yet: too many wrote at the same time. The e-stop works without this page; tap"
                                + " once more to log it.");
        return "redirect:" + BenchListActs.address(cell);
    }

    private void mustExist(CellId cell) {
        if (cells.find(cell).isEmpty()) {
            throw new NotFoundException("cell");
        }
    }

    /**
     * A form without a token that can be read is a stop all the same, and others' locks are no reason not to log one. False
     * when the database gave up again and again.
     */
    private boolean logOnce(CellId cell, RunEvent.Kind stop, @Nullable String formToken, SignedInPerson me) {
        try {
            once.runPatiently(formToken, () -> {
                log.stop(cell, stop, me.id());
                return BenchListActs.address(cell);
            });
        } catch (InvalidFormTokenException noToken) {
            return withoutToken(cell, stop, me);
        } catch (TransientDataAccessException gaveUp) {
            return gaveUp(cell, gaveUp);
        }
        return true;
    }

    private boolean withoutToken(CellId cell, RunEvent.Kind stop, SignedInPerson me) {
        try {
            Patience.again(() -> log.stop(cell, stop, me.id()));
            return true;
        } catch (TransientDataAccessException gaveUp) {
            return gaveUp(cell, gaveUp);
        }
    }

    private static boolean gaveUp(CellId cell, TransientDataAccessException why) {
        LOG.error("a stop on cell {} could not be logged", cell, why);
        return false;
    }

    @PostMapping("/bench/{cell}/holds")
    String hold(
            @PathVariable CellId cell,
            @RequestParam Map<String, String> fields,
            @AuthenticationPrincipal SignedInPerson me,
            RedirectAttributes flash,
            HttpServletResponse response,
            Model model) {
        mustExist(cell);
        PlainText.Checked reason = PlainText.check(fields.get("reason"), LONGEST_REASON);
        if (!(reason instanceof PlainText.Fine accepted)) {
            response.setStatus(HttpStatus.UNPROCESSABLE_CONTENT.value());
            String says = ((PlainText.Refused) reason).says();
            return pages.page(cell, me, Map.of("reason", says), new HashMap<>(fields), model);
        }
        boolean tag = "tag".equals(fields.get("kind"));
        Optional<Instant> before = once.actedAt(fields.get("formToken"));
        Optional<String> next = once.runPatiently(fields.get("formToken"), () -> {
            if (tag) {
                states.tagOut(cell, me.id(), accepted.text());
            } else {
                states.hold(cell, me.id(), accepted.text());
            }
            return BenchListActs.address(cell);
        });
        flash.addFlashAttribute(
                "told",
                before.map(
                                at -> "This form was already sent at " + labTime.lately(at)
                                        + ". The cell's state is as shown here; to hold or tag it again, send the form below anew.")
                        .orElse(
                                tag
                                        ? "Tagged out. No release until staff put it back."
                                        : "Held. No release until staff put it back."));
        return "redirect:" + next.orElse(BenchListActs.address(cell));
    }

    @PostMapping("/bench/{cell}/withdraw")
    String withdraw(
            @PathVariable CellId cell,
            @RequestParam BookingId booking,
            @RequestParam(required = false) @Nullable String why,
            @RequestParam(required = false) @Nullable String formToken,
            @AuthenticationPrincipal SignedInPerson me) {
        if (!BenchStages.acts(screens.ofCell(cell, booking, me), me)) {
            throw new NotFoundException("booking");
        }
        once.run(formToken, () -> {
            boolean values = "values".equals(why);
            releases.withdraw(
                    booking,
                    values ? LapseRule.VALUES_CHANGED : LapseRule.WITHDRAWN,
                    values
                            ? "A setting was changed at the robot: the values are read again."
                            : me.printedName() + " took it back.",
                    me.id());
            return BenchListActs.address(cell);
        });
        return "redirect:" + BenchListActs.address(cell);
    }
}
