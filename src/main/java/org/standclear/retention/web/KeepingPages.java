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
import org.standclear.retention.KeepingRule;
import org.standclear.retention.KeepingRules;

/** What is kept, for how long, and what never goes. */
@Controller
class KeepingPages {

    private final KeepingRules rules;

    KeepingPages(KeepingRules rules) {
        this.rules = rules;
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
        model.addAttribute("mayChange", me.is(Role.ADMINISTRATOR));
        model.addAttribute("readsLog", me.is(Role.ADMINISTRATOR) || me.is(Role.REVIEWER));
        return "retention/keeping";
    }
}
