package org.standclear.core.program.phrases;

import java.util.EnumMap;
import java.util.Map;
import org.jspecify.annotations.Nullable;
import org.standclear.core.text.BadInputException;

/**
 * A line of a program with what it was taken for.
 *
 * @param number counted from 1
 * @param kind what of the book it fits
 * @param phrase the phrase when it fits one
 * @param parts as they stand in the line, in words of ours
 */
record MatchedLine(
        int number, String text, Kind kind, @Nullable Phrase phrase, Map<Part, String> parts) {

    /** What a line can be. */
    enum Kind {
        EMPTY,
        SECTION_BEGIN,
        SECTION_END,
        PHRASE,
        NOT_UNDERSTOOD
    }

    MatchedLine {
        parts = parts.isEmpty() ? Map.of() : new EnumMap<>(parts);
    }

    boolean means(Meaning meaning) {
        return phrase != null && phrase.meaning() == meaning;
    }

    boolean saysSomething() {
        return kind != Kind.EMPTY && !means(Meaning.COMMENT);
    }

    boolean has(Part part) {
        return parts.containsKey(part);
    }

    /** The text of a part; refuses one that says nothing. */
    String text(Part part) {
        String value = parts.get(part);
        if (value == null || value.isEmpty() || value.length() > 200) {
            throw new BadInputException(number, "the phrase names no " + part.word());
        }
        return value;
    }

    /** The text of a part, when it is one that the part can have. */
    String checked(Part part) {
        String value = text(part);
        String wrong = PartValue.wrong(part, value);
        if (wrong != null) {
            throw new BadInputException(number, wrong);
        }
        return value;
    }

    /** A number in mm, mm/s, s, deg or percent. */
    double number(Part part) {
        double value = PartValue.number(checked(part)) * (phrase == null ? 1 : phrase.unit(part));
        String wrong = part.isNumber() ? PartValue.wrong(part, plain(value)) : null;
        if (wrong != null) {
            throw new BadInputException(number, wrong);
        }
        return value;
    }

    private static String plain(double value) {
        return new java.math.BigDecimal(value)
                .setScale(12, java.math.RoundingMode.HALF_EVEN)
                .toPlainString();
    }
}
