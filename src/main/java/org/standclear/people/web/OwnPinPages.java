package org.standclear.people.web;

import jakarta.servlet.http.HttpServletResponse;
import java.util.Map;
import java.util.Optional;
import org.jspecify.annotations.Nullable;
import org.springframework.http.HttpStatus;
import org.springframework.security.core.annotation.AuthenticationPrincipal;
import org.springframework.stereotype.Controller;
import org.springframework.ui.Model;
import org.springframework.web.bind.annotation.GetMapping;
import org.springframework.web.bind.annotation.PostMapping;
import org.springframework.web.bind.annotation.RequestParam;
import org.standclear.people.SigningPins;
import org.standclear.people.SigningPins.Choice;
import org.standclear.platform.forms.PostOnce;
import org.standclear.platform.security.SignedInPerson;

/** Everybody's own signing PIN for the shared bench screen. */
@Controller
class OwnPinPages {

    private final CurrentPassword current;
    private final SigningPins pins;
    private final PostOnce postOnce;

    OwnPinPages(CurrentPassword current, SigningPins pins, PostOnce postOnce) {
        this.current = current;
        this.pins = pins;
        this.postOnce = postOnce;
    }

    @GetMapping("/me/pin")
    String form(@RequestParam Map<String, String> parameters, @AuthenticationPrincipal SignedInPerson me, Model model) {
        model.addAttribute("chosen", parameters.containsKey("chosen"));
        return page(me, Map.of(), model);
    }

    @PostMapping("/me/pin")
    String choose(
            @RequestParam Map<String, String> values,
            @AuthenticationPrincipal SignedInPerson me,
            HttpServletResponse response,
            Model model) {
        Typed typed = new Typed(values);
        if (!typed.raw("pin").equals(typed.raw("pinAgain"))) {
            typed.refuse("pinAgain", "The two PINs differ. Type the same one twice.");
        } else if (current.isRight(typed, me)) {
            Optional<String> done = postOnce.run(typed.raw("formToken"), () -> choose(typed, me));
            if (done.isPresent()) {
                return "redirect:" + done.get();
            }
        }
        response.setStatus(HttpStatus.UNPROCESSABLE_CONTENT.value());
        return page(me, typed.errors(), model);
    }

    private @Nullable String choose(Typed typed, SignedInPerson me) {
        if (pins.choose(me.id(), typed.raw("pin")) instanceof Choice.Refused refused) {
            typed.refuse("pin", refused.says());
            return null;
        }
        return "/me/pin?chosen";
    }

    private String page(SignedInPerson me, Map<String, String> errors, Model model) {
        model.addAttribute("errors", errors);
        model.addAttribute("isSet", pins.isSet(me.id()));
        return "people/own-pin";
    }
}
