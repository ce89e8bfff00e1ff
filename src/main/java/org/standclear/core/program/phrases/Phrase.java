package org.standclear.core.program.phrases;

import java.util.EnumMap;
import java.util.Map;
import java.util.Optional;

/**
 * One phrase of a phrasebook.
 *
 * @param units length in mm, speed in mm/s, time in s of what the phrase writes, by quantity
 * @param words of the language for words of ours, by part
 * @param fixed parts that the phrase has without writing them
 */
record Phrase(
        PhrasePattern pattern,
        Meaning meaning,
        Map<String, Double> units,
        Map<Part, Map<String, String>> words,
        Map<Part, String> fixed) {

    Phrase {
        units = Map.copyOf(units);
        words = Map.copyOf(words);
        fixed = Map.copyOf(fixed);
    }

    /** The parts in a line, in words of ours; empty when the line is another one or has a word that is not known. */
    Optional<Map<Part, String>> match(String line) {
        return pattern.match(line).flatMap(this::translated);
    }

    private Optional<Map<Part, String>> translated(Map<Part, String> found) {
        Map<Part, String> parts = new EnumMap<>(Part.class);
        parts.putAll(fixed);
        for (Map.Entry<Part, String> one : found.entrySet()) {
            Map<String, String> known = words.get(one.getKey());
            String word = known == null ? one.getValue() : known.get(one.getValue());
            if (word == null) {
                return Optional.empty();
            }
            parts.put(one.getKey(), word);
        }
        return Optional.of(parts);
    }

    /** By what a number of a part is multiplied to be in mm, mm/s or s. */
    double unit(Part part) {
        return part.quantity()
                .map(quantity -> units.getOrDefault(quantity, 1.0))
                .orElse(1.0);
    }
}
