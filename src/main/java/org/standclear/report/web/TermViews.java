package org.standclear.report.web;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.stream.Collectors;
import org.jspecify.annotations.Nullable;
import org.springframework.stereotype.Component;
import org.standclear.core.quantity.Interval;
import org.standclear.core.quantity.ShownNumber;
import org.standclear.core.statistics.Confidence;
import org.standclear.core.statistics.CountComparison;
import org.standclear.core.statistics.Share;
import org.standclear.people.People;
import org.standclear.platform.ids.PersonId;
import org.standclear.platform.time.LabTime;
import org.standclear.report.TermReport;
import org.standclear.report.TermReport.Action;
import org.standclear.report.TermReport.CellUse;
import org.standclear.report.TermReport.Counted;
import org.standclear.report.TermReport.Fairness;
import org.standclear.report.TermReport.Happened;
import org.standclear.report.TermReports;
import org.standclear.report.TermSpan;
import org.standclear.report.web.TermView.ActionLine;
import org.standclear.report.web.TermView.ComparedLine;
import org.standclear.report.web.TermView.CountLine;
import org.standclear.report.web.TermView.Fact;

/** Says a term report in words. Counts come with their limits; a change is said only where the counts show one. */
@Component
class TermViews {

    private final TermReports reports;
    private final People people;
    private final LabTime labTime;

    TermViews(TermReports reports, People people, LabTime labTime) {
        this.reports = reports;
        this.people = people;
        this.labTime = labTime;
    }

    TermView of(TermSpan span, boolean withNames) {
        TermReport now = reports.of(span);
        Happened then = reports.happened(span.before());
        return new TermView(
                span.first() + " to " + span.last(),
                now.exposure().starts() + " starts in " + now.exposure().runs() + " runs, "
                        + now.exposure().attendedMinutes() + " attended minutes",
                span.first().toString(),
                span.last().toString(),
                span.before().first() + " to " + span.before().last(),
                withNames,
                labTime.full(labTime.now()),
                exposure(now),
                now.counts().stream().map(one -> line(one, now)).toList(),
                now.exposure().starts() > 0 && then.starts() > 0,
                compared(now, then),
                between(now),
                now.cells().stream().map(TermViews::cell).toList(),
                now.authorisations().stream()
                        .map(one -> List.of(
                                one.duty(),
                                "" + one.standing(),
                                "" + one.granted(),
                                "" + one.revoked(),
                                "" + one.endingSoon()))
                        .toList(),
                actions(now, withNames),
                fairness(now.fairness()),
                UpkeepView.of(now.upkeep()));
    }

    private static List<Fact> exposure(TermReport report) {
        TermReport.Exposure exposure = report.exposure();
        return List.of(
                new Fact("Starts", "" + exposure.starts()),
                new Fact("Runs", "" + exposure.runs()),
                new Fact("Attended minutes", "" + exposure.attendedMinutes()),
                new Fact("Passes", "" + exposure.passes()));
    }

    private static CountLine line(Counted one, TermReport report) {
        Interval rate = one.rate(report.exposure());
        return new CountLine(
                one.words(),
                one.events(),
                shown(one.limits(), 1),
                rate == null ? one.happensInStarts() ? "no starts" : "-" : shown(rate, 1));
    }

    private static List<ComparedLine> compared(TermReport now, Happened then) {
        List<ComparedLine> lines = new ArrayList<>();
        for (int i = 0; i < now.counts().size(); i++) {
            Counted one = now.counts().get(i);
            Counted before = then.counts().get(i);
            CountComparison comparison =
                    one.happensInStarts() ? one.against(before, now.exposure().starts(), then.starts()) : null;
            lines.add(new ComparedLine(
                    one.words(),
                    one.events() + " in " + now.exposure().starts(),
                    before.events() + " in " + then.starts(),
                    comparison == null ? "-" : String.format(Locale.ROOT, "%.3f", comparison.pValue()),
                    one.happensInStarts() ? says(comparison) : "not compared: it may have had no start"));
        }
        return lines;
    }

    static String says(@Nullable CountComparison comparison) {
        if (comparison == null) {
            return "one of the terms has no starts";
        }
        if (!comparison.showsChange()) {
            return "no evidence of change";
        }
        boolean more = comparison.first().events() * comparison.secondExposure()
                > comparison.second().events() * comparison.firstExposure();
        return more ? "more per start than before" : "fewer per start than before";
    }

    private static String between(TermReport report) {
        if (report.between().gaps().isEmpty()) {
            int starts = report.between().sinceLast();
            return starts == 0
                    ? "No starts and no events."
                    : "No near miss, no worse, no protective stop and no e-stop for a cause in " + starts
                            + " starts. With 95 % confidence the rate lies below "
                            + String.format(
                                    Locale.ROOT, "%.1f", 100 * new Share(0, starts).upperLimit(Confidence.OF_REPORTS))
                            + " in 100 starts; so few starts cannot show less.";
        }
        String gaps = report.between().gaps().stream().map(String::valueOf).collect(Collectors.joining(", "));
        return "Starts from one event to the next: " + gaps + "; since the last event: "
                + report.between().sinceLast() + ".";
    }

    private static List<String> cell(CellUse use) {
        return List.of(
                use.cell(),
                "" + use.starts(),
                "" + use.daysInUse(),
                use.testsPassed() + " / " + use.testsFailed(),
                "" + use.untestedDays(),
                "" + use.holds(),
                "" + use.tags(),
                "" + use.versions());
    }

    private List<ActionLine> actions(TermReport report, boolean withNames) {
        Map<PersonId, String> numbered = new HashMap<>();
        return report.actions().stream()
                .map(action -> new ActionLine(
                        "no. " + action.incident(),
                        withNames ? action.words() : "left out",
                        action.level(),
                        withNames
                                ? people.printedName(action.owner())
                                : numbered.computeIfAbsent(action.owner(), id -> "person " + (numbered.size() + 1)),
                        action.due().toString(),
                        state(action)))
                .toList();
    }

    private String state(Action action) {
        if (action.doneAt() == null) {
            return action.due().isBefore(labTime.today()) ? "overdue" : "open";
        }
        Boolean effective = action.effective();
        if (effective == null) {
            return "done, effect not checked yet";
        }
        return effective ? "done, it helped" : "done, it did not help";
    }

    private static List<Fact> fairness(Fairness fairness) {
        List<Fact> facts = new ArrayList<>();
        List<Integer> each = fairness.runsEach();
        Share without = fairness.without();
        if (without == null) {
            facts.add(new Fact("Enrolled students", "none"));
        } else {
            facts.add(new Fact("Enrolled students", "" + each.size()));
            facts.add(new Fact(
                    "Runs of one student, fewest / middle / most",
                    each.get(0) + " / " + ShownNumber.plain(fairness.median()) + " / " + each.get(each.size() - 1)));
            facts.add(new Fact("Students without a run", share(without)));
        }
        facts.add(new Fact("Bookings", "" + fairness.bookings()));
        if (fairness.bookings() > 0) {
            facts.add(new Fact("Missed", share(new Share(fairness.missed(), fairness.bookings()))));
            facts.add(new Fact("Cancelled late", share(new Share(fairness.cancelledLate(), fairness.bookings()))));
            facts.add(new Fact("Moved by staff", share(new Share(fairness.movedByStaff(), fairness.bookings()))));
        }
        return facts;
    }

    private static String share(Share share) {
        Interval limits = share.limits(Confidence.OF_REPORTS);
        return share.part() + " of " + share.whole() + " ("
                + shown(new Interval(100 * limits.min(), 100 * limits.max()), 0) + " %)";
    }

    private static String shown(Interval limits, int digits) {
        String format = "%." + digits + "f to %." + digits + "f";
        return String.format(Locale.ROOT, format, limits.min(), limits.max());
    }
}
