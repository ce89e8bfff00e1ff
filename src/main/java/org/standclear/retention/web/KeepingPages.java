package org.standclear.retention.web;

import java.util.List;
import java.util.stream.Stream;
import org.springframework.security.core.annotation.AuthenticationPrincipal;
import org.springframework.stereotype.Controller;
import org.springframework.ui.Model;
import org.springframework.web.bind.annotation.GetMapping;
import org.standclear.platform.retention.RecordKind;
import org.standclear.platform.security.Role;
import org.standclear.platform.security.SignedInPerson;
import org.standclear.retention.DefaultTimes;
import org.standclear.retention.DisposalWaits;
import org.standclear.retention.KeepingRule;
import org.standclear.retention.KeepingRules;
import org.standclear.retention.Shortenings;

/** What is kept, for how long, and what never goes. */
@Controller
class KeepingPages {

    private final KeepingRules rules;

    private final Shortenings shortenings;
    private final DisposalWaits waits;
    private final DueViews views;

    KeepingPages(KeepingRules rules, Shortenings shortenings, DisposalWaits waits, DueViews views) {
        this.rules = rules;
        this.shortenings = shortenings;
        this.waits = waits;
        this.views = views;
    }

    /** A kind of record as it is shown. */
    record Line(String kind, String words, String time, String from, String atTheEnd, String source) {

        static Line of(KeepingRule rule) {
            RecordKind kind = rule.kind();
            return new Line(
                    kind.name(),
                    kind.words(),
                    rule.time().words(),
                    kind.clockStart(),
                    kind.atTheEnd(),
                    rule.number() == 0 ? DefaultTimes.source(kind) : "The college’s own, changed here.");
        }
    }

    @GetMapping("/retention")
    String show(@AuthenticationPrincipal SignedInPerson me, Model model) {
        List<Line> lines =
                Stream.of(RecordKind.values()).map(rules::inForce).map(Line::of).toList();
        model.addAttribute("lines", lines);
        model.addAttribute("proposals", shortenings.open());
        model.addAttribute("wait", views.days(waits.inForce()));
        model.addAttribute("mayChange", me.is(Role.ADMINISTRATOR));
        model.addAttribute("readsLog", me.is(Role.ADMINISTRATOR) || me.is(Role.REVIEWER));
        return "retention/keeping";
    }
}
