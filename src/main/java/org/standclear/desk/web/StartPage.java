package org.standclear.desk.web;

import org.springframework.security.core.annotation.AuthenticationPrincipal;
import org.springframework.stereotype.Controller;
import org.springframework.web.bind.annotation.GetMapping;
import org.standclear.platform.security.Role;
import org.standclear.platform.security.SignedInPerson;

/** Sends everybody to the page on which their day begins. */
@Controller
class StartPage {

    @GetMapping("/")
    String start(@AuthenticationPrincipal SignedInPerson me) {
        return "redirect:" + startOf(me);
    }

    private static String startOf(SignedInPerson me) {
        if (me.is(Role.TECHNICIAN)) {
            return "/desk";
        }
        if (me.is(Role.INSTRUCTOR)) {
            return "/today";
        }
        if (me.is(Role.STUDENT)) {
            return "/me";
        }
        if (me.is(Role.REVIEWER)) {
            return "/reviewer";
        }
        if (me.is(Role.ADMINISTRATOR)) {
            return "/people";
        }
        return me.is(Role.BENCH) ? "/bench" : "/today";
    }
}
