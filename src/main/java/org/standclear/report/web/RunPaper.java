package org.standclear.report.web;

import java.util.List;

/**
 * Everything about one run, as its paper prints it.
 *
 * @param before booking, program, answers and their findings, waivers, signatures in the order of signing
 * @param after incidents, actions, tags, questions, entries of the record; empty where the reader may not read them
 * @param withNames whether people are named; without, free text is left out too
 */
record RunPaper(
        String id,
        String headline,
        String kicker,
        boolean withNames,
        String madeAt,
        List<TermView.Fact> facts,
        List<RunPart> before,
        List<RunPart> after,
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
