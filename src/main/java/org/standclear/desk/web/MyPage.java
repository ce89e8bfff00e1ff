package org.standclear.desk.web;

import java.util.LinkedHashMap;
import java.util.Map;
import org.springframework.security.core.annotation.AuthenticationPrincipal;
import org.springframework.stereotype.Controller;
import org.springframework.ui.Model;
import org.springframework.web.bind.annotation.GetMapping;
import org.standclear.booking.Confirmations;
import org.standclear.platform.ids.BookingId;
import org.standclear.platform.ids.Id;
import org.standclear.platform.security.SignedInPerson;
import org.standclear.platform.time.LabTime;

/** A person's own page: the next slot first, with what to do next. */
@Controller
class MyPage {

    private final MyViews views;
    private final MyCredits credits;

    private final Confirmations confirmations;
    private final MyNews news;
    private final LabTime labTime;

    MyPage(MyViews views, MyCredits credits, Confirmations confirmations, MyNews news, LabTime labTime) {
        this.views = views;
        this.credits = credits;
        this.confirmations = confirmations;
        this.news = news;
        this.labTime = labTime;
    }

    @GetMapping("/me")
    String mine(@AuthenticationPrincipal SignedInPerson me, Model model) {
        MyView view = views.of(me);
        model.addAttribute("view", view);
        model.addAttribute("coming", coming(view));
        model.addAttribute("toMakeUp", credits.lines(me.id()));
        model.addAttribute("offers", news.offers(me.id()));
        model.addAttribute("unread", news.unread(me.id()));
        return "desk/me";
    }

    /** Bookings whose operator is asked whether they come, with until when. */
    private Map<String, String> coming(MyView view) {
        Map<String, String> asked = new LinkedHashMap<>();
        view.ahead().stream()
                .filter(one -> one.part().equals("operator"))
                .forEach(one -> confirmations
                        .askedUntil(new BookingId(Id.parse(one.id())))
                        .ifPresent(until -> asked.put(one.id(), "Say by " + labTime.full(until) + " that you come")));
        return asked;
    }
}
