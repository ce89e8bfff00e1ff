package org.standclear.core.program.phrases;

import java.util.Map;
import java.util.Optional;
import java.util.StringJoiner;
import org.standclear.core.quantity.ShownNumber;

/**
 * What one line was taken for, in words for a person.
 *
 * @param line counted from 1
 * @param text as it stands in the program
 * @param understood whether it fits a phrase, and the parts of it can be what they say
 * @param says its meaning with its parts, or why it is not understood
 */
public record LineMeaning(int line, String text, boolean understood, String says) {

    private static final String NOT_UNDERSTOOD = "not understood";

    static Optional<LineMeaning> of(MatchedLine line) {
        return switch (line.kind()) {
            case EMPTY -> Optional.empty();
            case SECTION_BEGIN -> Optional.of(meaning(line, "a section begins", line.parts()));
            case SECTION_END -> Optional.of(meaning(line, "the section ends", Map.of()));
            case PHRASE -> Optional.of(phrase(line));
            case NOT_UNDERSTOOD -> Optional.of(new LineMeaning(line.number(), line.text(), false, NOT_UNDERSTOOD));
        };
    }

    private static LineMeaning phrase(MatchedLine line) {
        for (Map.Entry<Part, String> part : line.parts().entrySet()) {
            String wrong = PartValue.wrong(part.getKey(), part.getValue());
            if (wrong != null) {
                return new LineMeaning(line.number(), line.text(), false, NOT_UNDERSTOOD + ": " + wrong);
            }
        }
        Phrase phrase = line.phrase();
        return meaning(line, phrase == null ? "" : phrase.meaning().words(), line.parts());
    }

    /** A length, speed or time in the unit that the check counts in: a wrong unit of the book shows. */
    private static String shown(MatchedLine line, Part part, String value) {
        Phrase phrase = line.phrase();
        String unit = part.shownUnit();
        return unit.isEmpty() || phrase == null
                ? value
                : ShownNumber.plain(PartValue.number(value) * phrase.unit(part)) + " " + unit;
    }

    private static LineMeaning meaning(MatchedLine line, String words, Map<Part, String> parts) {
        StringJoiner says = new StringJoiner(", ", words + (parts.isEmpty() ? "" : ": "), "");
        parts.forEach((part, value) -> says.add(part.word() + " " + shown(line, part, value)));
        return new LineMeaning(line.number(), line.text(), true, says.toString());
    }
}
