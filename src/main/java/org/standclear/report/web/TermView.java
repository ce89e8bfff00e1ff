package org.standclear.report.web;

import java.util.List;

/**
 * A term report in words, as page, paper and table show it.
 *
 * @param withNames whether people are named
 * @param comparable whether both terms had starts
 */
record TermView(
        String title,
        String headline,
        String first,
        String last,
        String before,
        boolean withNames,
        String madeAt,
        List<Fact> exposure,
        List<CountLine> counts,
        boolean comparable,
        List<ComparedLine> compared,
        String between,
        List<List<String>> cells,
        List<List<String>> authorisations,
        List<ActionLine> actions,
        List<Fact> fairness,
        UpkeepView upkeep) {

    /** A name and a value. */
    record Fact(String name, String value) {}

    /** Events of one kind with their exact limits. */
    record CountLine(String words, int events, String limits, String rate) {}

    /** The same kind in the term before, and whether the two counts show a change. */
    record ComparedLine(String words, String now, String then, String p, String says) {}

    /** A corrective action. */
    record ActionLine(String incident, String words, String level, String owner, String due, String state) {}
}
