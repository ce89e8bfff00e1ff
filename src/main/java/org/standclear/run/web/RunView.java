package org.standclear.run.web;

import java.util.List;
import org.standclear.platform.time.LabTime;

/** Everything about one run on one page, in words. */
record RunView(
        String id,
        String headline,
        String kicker,
        String state,
        String stateWords,
        List<Fact> facts,
        List<Fact> program,
        String programHref,
        String answerHref,
        String answerWords,
        List<Column> columns,
        List<SheetView> sheets,
        List<Differs> disagreements,
        List<ReleaseView> releases,
        List<LapseView> lapses,
        List<EventView> events,
        List<EntryView> entries,
        boolean mayCorrect) {

    /** A name and a value. */
    record Fact(String name, String value) {}

    /** Declared, found, read at the bench; {@code state} is agrees, disagrees or waiting. */
    record Column(String item, String declared, String found, String read, String state) {}

    /** A round of a list. */
    record SheetView(String title, String outcome, List<SignatureView> signatures) {}

    /** A signature with what it signs. */
    record SignatureView(
            String name,
            String part,
            String at,
            String iso,
            String meaning,
            String method,
            String statement,
            String sha256) {}

    /** An answer that disagreed. */
    record Differs(String at, String who, String item, String expected, String read) {}

    /** A release and what became of it. */
    record ReleaseView(String code, String issued, String until, String releaser, String became) {}

    /** Something that lapsed. */
    record LapseView(String at, String what, String because) {}

    /** One line of the log. */
    record EventView(
            String id,
            String at,
            String iso,
            String what,
            String words,
            String who,
            boolean correction,
            boolean stop) {}

    /** An entry of the lab's record. */
    record EntryView(long sequence, String at, String words, String hash) {}

    /** "Thu 26 Nov 2026 14:07:31". */
    static String instant(LabTime labTime, java.time.Instant at) {
        return labTime.day(at) + " " + labTime.seconds(at);
    }
}
