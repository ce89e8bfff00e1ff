package org.standclear.people.web;

import jakarta.servlet.http.HttpServletResponse;
import java.util.Map;
import org.jspecify.annotations.Nullable;
import org.springframework.beans.factory.ObjectProvider;
import org.springframework.http.HttpStatus;
import org.springframework.security.core.annotation.AuthenticationPrincipal;
import org.springframework.stereotype.Controller;
import org.springframework.ui.Model;
import org.springframework.web.bind.annotation.GetMapping;
import org.springframework.web.bind.annotation.PostMapping;
import org.springframework.web.bind.annotation.RequestAttribute;
import org.springframework.web.bind.annotation.RequestParam;
import org.standclear.people.signin.SetUp;
import org.standclear.platform.security.LocalPath;
import org.standclear.platform.security.OfferedAccounts;
import org.standclear.platform.security.RefusedSignIn;
import org.standclear.platform.security.SignedInPerson;
import org.standclear.platform.time.LabTime;
import org.standclear.platform.web.NotFoundException;

/** The sign-in form, and the same form again with the reason when it was refused. */
@Controller
class SignInPages {

    private static final Map<String, String> WHY = Map.of(
            "ended", "Your session has ended. Sign in again to go on where you were.",
            "lost",
                    "You were not signed in any more when the form was sent, so nothing was stored."
                            + " Sign in and send it again.",
            "out", "You have signed out.",
            "ready", "The lab is set up. Sign in as its administrator.",
            "changed", "Your password is changed, and all your sessions have ended. Sign in with the new one.");

    private final SetUp setUp;
    private final LabTime labTime;
    private final ObjectProvider<OfferedAccounts> offered;

    SignInPages(SetUp setUp, LabTime labTime, ObjectProvider<OfferedAccounts> offered) {
        this.setUp = setUp;
        this.labTime = labTime;
        this.offered = offered;
    }

    @GetMapping("/sign-in")
    String form(
            @RequestParam Map<String, String> parameters,
            @AuthenticationPrincipal @Nullable SignedInPerson me,
            Model model) {
        String to = LocalPath.of(parameters.get("to")).orElse("");
        if (me != null) {
            return "redirect:" + (to.isEmpty() ? "/" : to);
        }
        WHY.keySet().stream()
                .filter(parameters::containsKey)
                .findFirst()
                .ifPresent(why -> model.addAttribute("why", WHY.get(why)));
        return page(new RefusedSignIn("", to, null), Map.of(), model);
    }

    @PostMapping("/sign-in/refused")
    String refused(
            @RequestAttribute(name = RefusedSignIn.ATTRIBUTE, required = false) @Nullable RefusedSignIn refused,
            HttpServletResponse response,
            Model model) {
        if (refused == null) {
            throw new NotFoundException("page");
        }
        if (refused.pausedUntil() == null) {
            response.setStatus(HttpStatus.UNPROCESSABLE_CONTENT.value());
            return page(refused, Map.of("username", "The sign-in name or the password is not right."), model);
        }
        response.setStatus(HttpStatus.TOO_MANY_REQUESTS.value());
        String says = "Too many tries. The next one is looked at from " + labTime.seconds(refused.pausedUntil())
                + "; trying sooner changes nothing.";
        return page(refused, Map.of("username", says), model);
    }

    private String page(RefusedSignIn form, Map<String, String> errors, Model model) {
        model.addAttribute("form", form);
        model.addAttribute("errors", errors);
        model.addAttribute("setUpNeeded", setUp.isNeeded());
        model.addAttribute("offered", offered.getIfAvailable());
        return "people/sign-in";
    }
}
