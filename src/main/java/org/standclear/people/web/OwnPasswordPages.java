package org.standclear.people.web;

import jakarta.servlet.http.HttpServletRequest;
import jakarta.servlet.http.HttpServletResponse;
import java.util.Map;
import java.util.Optional;
import org.jspecify.annotations.Nullable;
import org.springframework.http.HttpStatus;
import org.springframework.security.core.annotation.AuthenticationPrincipal;
import org.springframework.security.core.context.SecurityContextHolder;
import org.springframework.stereotype.Controller;
import org.springframework.ui.Model;
import org.springframework.web.bind.annotation.GetMapping;
import org.springframework.web.bind.annotation.PostMapping;
import org.springframework.web.bind.annotation.RequestParam;
import org.standclear.people.PeopleRegister;
import org.standclear.people.PeopleRegister.Outcome;
import org.standclear.people.PeopleRegister.Password;
import org.standclear.platform.forms.PostOnce;
import org.standclear.platform.security.AccountStates;
import org.standclear.platform.security.SignedInPerson;

/** Everybody's own password. */
@Controller
class OwnPasswordPages {

    private final CurrentPassword current;
    private final PeopleRegister register;
    private final AccountStates accounts;
    private final PostOnce postOnce;

    OwnPasswordPages(CurrentPassword current, PeopleRegister register, AccountStates accounts, PostOnce postOnce) {
        this.current = current;
        this.register = register;
        this.accounts = accounts;
        this.postOnce = postOnce;
    }

    @GetMapping("/me/password")
    String form(@AuthenticationPrincipal SignedInPerson me, Model model) {
        return page(me, Map.of(), model);
    }

    @PostMapping("/me/password")
    String change(
            @RequestParam Map<String, String> values,
            @AuthenticationPrincipal SignedInPerson me,
            HttpServletRequest request,
            HttpServletResponse response,
            Model model) {
        Typed typed = new Typed(values);
        if (!typed.raw("password").equals(typed.raw("passwordAgain"))) {
            typed.refuse("passwordAgain", "The two new passwords differ. Type the same one twice.");
        } else if (typed.raw("password").equals(typed.raw("current"))) {
            typed.refuse("password", "That is the password you have. Choose another.");
        } else if (current.isRight(typed, me)) {
            Optional<String> done = postOnce.run(typed.raw("formToken"), () -> change(typed, me));
            if (done.isPresent()) {
                signOut(request);
                return "redirect:" + done.get();
            }
        }
        response.setStatus(HttpStatus.UNPROCESSABLE_CONTENT.value());
        return page(me, typed.errors(), model);
    }

    private @Nullable String change(Typed typed, SignedInPerson me) {
        Outcome outcome = register.setPassword(me.id(), new Password.Chosen(typed.raw("password")), me.id());
        if (outcome instanceof Outcome.Refused refused) {
            typed.refuse(refused.field(), refused.says());
            return null;
        }
        return "/sign-in?changed";
    }

    /** The register ended all sessions in the database; this one must not be written back by its own request. */
    private static void signOut(HttpServletRequest request) {
        var session = request.getSession(false);
        if (session != null) {
            session.invalidate();
        }
        SecurityContextHolder.clearContext();
    }

    private String page(SignedInPerson me, Map<String, String> errors, Model model) {
        model.addAttribute("errors", errors);
        model.addAttribute(
                "given",
                accounts.of(me.id())
                        .map(AccountStates.AccountState::mustChangePassword)
                        .orElse(false));
        return "people/own-password";
    }
}
