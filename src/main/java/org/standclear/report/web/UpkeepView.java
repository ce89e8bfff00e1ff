package org.standclear.report.web;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import org.standclear.report.TermUpkeep;
import org.standclear.report.TermUpkeep.Duty;
import org.standclear.report.TermUpkeep.MakeUps;
import org.standclear.report.web.TermView.Fact;

/**
 * How cells were kept in a term, in words; it names nobody, so it is the same with and without names.
 *
 * @param tags cell, kind, how many, hours, still hanging
 * @param waivers cell, given, used, taken back, checks
 */
record UpkeepView(
        String headline,
        List<DutyLine> duties,
        List<List<String>> tags,
        List<List<String>> waivers,
        List<Fact> makeUps) {

    /** What came round on a cell. */
    record DutyLine(String cell, String what, String often, String done, String fellDue, String overdue, String next) {

        List<String> values() {
            return List.of(cell, what, often, done, fellDue, overdue, next);
        }
    }

    static UpkeepView of(TermUpkeep upkeep) {
        return new UpkeepView(
                headline(upkeep.duties()),
                upkeep.duties().stream().map(UpkeepView::line).toList(),
                upkeep.tags().stream()
                        .map(one -> List.of(
                                one.cell(),
                                one.kind(),
                                "" + one.hung(),
                                String.format(Locale.ROOT, "%.1f", one.hours()),
                                "" + one.stillHanging()))
                        .toList(),
                upkeep.waivers().stream()
                        .map(one -> List.of(
                                one.cell(), "" + one.given(), "" + one.used(), "" + one.takenBack(), one.checks()))
                        .toList(),
                makeUps(upkeep.makeUps()));
    }

    private static String headline(List<Duty> duties) {
        List<String> late = new ArrayList<>();
        duties.stream().filter(Duty::lateAtEnd).forEach(one -> late.add(one.what() + " of " + one.cell()));
        return late.isEmpty()
                ? "Nothing was overdue at the end of the term."
                : "Overdue at the end of the term: " + String.join(", ", late) + ".";
    }

    private static DutyLine line(Duty one) {
        return new DutyLine(
                one.cell(),
                one.what(),
                one.intervalDays() == null ? "nobody has said" : "every " + one.intervalDays() + " days",
                "" + one.done(),
                "" + one.fellDue(),
                "" + one.overdueDays(),
                one.next() == null ? "-" : one.next() + (one.lateAtEnd() ? ", overdue" : ""));
    }

    private static List<Fact> makeUps(MakeUps makeUps) {
        return List.of(
                new Fact("Granted", "" + makeUps.granted()),
                new Fact("Used", "" + makeUps.used()),
                new Fact("Withdrawn", "" + makeUps.withdrawn()),
                new Fact("Expired without use", "" + makeUps.expired()),
                new Fact("Standing at the end", "" + makeUps.standing()));
    }
}
