package org.standclear.desk.web;

import org.springframework.security.core.annotation.AuthenticationPrincipal;
import org.springframework.stereotype.Controller;
import org.springframework.ui.Model;
import org.springframework.web.bind.annotation.GetMapping;
import org.standclear.platform.security.SignedInPerson;

/** A person's own page: the next slot first, with what to do next. */
@Controller
class MyPage {

    private final MyViews views;

    MyPage(MyViews views) {
        this.views = views;
    }

    @GetMapping("/me")
    String mine(@AuthenticationPrincipal SignedInPerson me, Model model) {
        model.addAttribute("view", views.of(me));
        return "desk/me";
    }
}
