package org.standclear.core.program.phrases;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.standclear.core.program.phrases.MatchedLine.Kind;
import org.standclear.core.text.BadInputException;
import org.standclear.core.text.InputText;

/** Holds each line of a text against the phrases of a book; the first that fits counts. */
final class LineMatcher {

    /** Longer lines are not understood. */
    private static final int LONGEST = 1000;

    private static final int MOST_LINES = 200_000;

    /** A program says something within so many lines. */
    private static final int MOST_FIRST = 1000;

    /** Characters times places of patterns: bounds the time that a text and a book can take together. */
    private static final long MOST_WORK = 150_000_000;

    private final Phrasebook book;
    private long work;

    LineMatcher(Phrasebook book) {
        this.book = book;
    }

    List<MatchedLine> lines(String text) {
        List<MatchedLine> lines = new ArrayList<>();
        for (String line : (Iterable<String>) InputText.plain(text).lines()::iterator) {
            if (lines.size() == MOST_LINES) {
                throw new BadInputException(
                        lines.size(), "the file has more than " + MOST_LINES + " lines; split it up");
            }
            lines.add(line(lines.size() + 1, line.strip()));
        }
        return lines;
    }

    boolean understandsTheFirstLine(String text) {
        return text.lines()
                .limit(MOST_FIRST)
                .map(line -> line(1, line.strip()))
                .filter(MatchedLine::saysSomething)
                .findFirst()
                .filter(line -> line.kind() != Kind.NOT_UNDERSTOOD)
                .isPresent();
    }

    private MatchedLine line(int number, String line) {
        if (line.isEmpty()) {
            return new MatchedLine(number, line, Kind.EMPTY, null, Map.of());
        }
        if (line.length() > LONGEST) {
            return new MatchedLine(number, line, Kind.NOT_UNDERSTOOD, null, Map.of());
        }
        Phrasebook.Sections sections = book.sections();
        if (sections != null) {
            if (tried(number, line, sections.end()).isPresent()) {
                return new MatchedLine(number, line, Kind.SECTION_END, null, Map.of());
            }
            Optional<Map<Part, String>> begin = tried(number, line, sections.begin());
            if (begin.isPresent()) {
                return new MatchedLine(number, line, Kind.SECTION_BEGIN, null, begin.get());
            }
        }
        for (Phrase phrase : book.phrases()) {
            pay(number, phrase.pattern().cost(line));
            Optional<Map<Part, String>> parts = phrase.match(line);
            if (parts.isPresent()) {
                return new MatchedLine(number, line, Kind.PHRASE, phrase, parts.get());
            }
        }
        return new MatchedLine(number, line, Kind.NOT_UNDERSTOOD, null, Map.of());
    }

    private Optional<Map<Part, String>> tried(int number, String line, PhrasePattern pattern) {
        pay(number, pattern.cost(line));
        return pattern.match(line);
    }

    private void pay(int number, long cost) {
        work += cost;
        if (work > MOST_WORK) {
            throw new BadInputException(
                    number,
                    "the file is too long for this phrasebook; split it up, or let the patterns begin with different words");
        }
    }
}
