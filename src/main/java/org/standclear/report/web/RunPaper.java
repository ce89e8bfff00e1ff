package org.standclear.report.web;

import java.util.List;

/**
 * Everything about one run, as its paper prints it.
 *
 * @param withNames whether people are named; without, free text is left out too
 */
record RunPaper(
        String headline,
        String kicker,
        boolean withNames,
        String madeAt,
        List<TermView.Fact> facts,
        List<ReleaseLine> releases,
        List<SignatureLine> signatures,
        List<EventLine> events,
        List<EventLine> lapses,
        List<EventLine> disagreements) {

    /** A release and what became of it. */
    record ReleaseLine(String code, String issued, String by, String until, String became) {}

    /** A signature with its statement. */
    record SignatureLine(
            String list, String part, String name, String at, String method, String statement, String sha256) {}

    /** Something that happened. */
    record EventLine(String at, String what, String who, String words) {}
}
