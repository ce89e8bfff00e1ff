package org.standclear.retention.web;

import java.time.LocalDate;
import java.util.Map;
import org.jspecify.annotations.Nullable;
import org.springframework.stereotype.Component;
import org.standclear.people.People;
import org.standclear.platform.security.Role;
import org.standclear.platform.security.SignedInPerson;
import org.standclear.platform.text.PlainText;
import org.standclear.platform.time.LabTime;
import org.standclear.retention.HoldTargets;
import org.standclear.retention.LegalHold;
import org.standclear.retention.LegalHold.Lifted;
import org.standclear.retention.LegalHold.Target;
import org.standclear.retention.LegalHolds;

/** A legal hold as pages show it. */
@Component
class HoldViews {

    private static final int LONGEST = 400;

    private final LegalHolds holds;
    private final HoldTargets targets;
    private final People people;
    private final LabTime labTime;

    HoldViews(LegalHolds holds, HoldTargets targets, People people, LabTime labTime) {
        this.holds = holds;
        this.targets = targets;
        this.people = people;
        this.labTime = labTime;
    }

    /**
     * A hold in words.
     *
     * @param href page of what is held, empty for a kind or when the reader may not open it
     * @param lifts whether the reader may lift it: a second person, without a part in it
     * @param whyNot why the reader may not, in words; empty when nothing of the hold speaks against it
     */
    record View(
            String id,
            String what,
            String href,
            String reason,
            String authority,
            String placed,
            String lifted,
            boolean stands,
            boolean lifts,
            String whyNot) {}

    View of(LegalHold hold, SignedInPerson me) {
        Lifted lifted = hold.lifted();
        String whyNot = holds.whyNotLift(hold, me.id()).orElse("");
        return new View(
                hold.id().toString(),
                what(hold.target()),
                href(hold.target(), me),
                hold.reason(),
                hold.authority(),
                people.printedName(hold.placedBy()) + ", " + labTime.full(hold.placedAt()),
                lifted == null
                        ? ""
                        : people.printedName(lifted.by()) + ", " + labTime.full(lifted.at()) + ": " + lifted.reason(),
                hold.stands(),
                hold.stands() && whyNot.isEmpty() && (me.is(Role.ADMINISTRATOR) || me.is(Role.INSTRUCTOR)),
                whyNot);
    }

    private String what(Target target) {
        if (target instanceof Target.One one) {
            String words = targets.words(one.about(), one.id());
            return "Everything about " + words;
        }
        Target.Span span = (Target.Span) target;
        return span.kind().words() + ", " + days(span.from(), span.until());
    }

    private String days(@Nullable LocalDate from, @Nullable LocalDate until) {
        if (from == null && until == null) {
            return "all of them";
        }
        return (from == null ? "" : "from " + from + " ") + (until == null ? "on" : "until " + until);
    }

    private static String href(Target target, SignedInPerson me) {
        if (!(target instanceof Target.One one)) {
            return "";
        }
        boolean seesRuns = me.isLabStaff() || me.is(Role.REVIEWER);
        return switch (one.about()) {
            case PERSON -> me.isLabStaff() || me.is(Role.ADMINISTRATOR) ? "/people/" + one.id() : "";
            case RUN -> seesRuns ? "/runs/" + one.id() : "";
            case INCIDENT -> seesRuns ? "/incidents/" + one.id() : "";
        };
    }

    /** What is wrong with a line of text, by its field; empty when nothing is. */
    static Map<String, String> wrong(String field, String text) {
        return PlainText.check(text, LONGEST) instanceof PlainText.Refused refused
                ? Map.of(field, refused.says())
                : Map.of();
    }
}
