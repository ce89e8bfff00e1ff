package org.standclear.desk.web;

import org.springframework.security.core.annotation.AuthenticationPrincipal;
import org.springframework.stereotype.Controller;
import org.springframework.ui.Model;
import org.springframework.web.bind.annotation.GetMapping;
import org.standclear.platform.security.SignedInPerson;

/** The lab's day at a glance: each cell as a strip, who is on duty, what waits for whom. */
@Controller
class TodayPage {

    private final TodayViews views;

    TodayPage(TodayViews views) {
        this.views = views;
    }

    @GetMapping("/today")
    String today(@AuthenticationPrincipal SignedInPerson me, Model model) {
        model.addAttribute("view", views.now(me));
        return "desk/today";
    }
}
