package org.standclear.core.program.blocks;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.jspecify.annotations.Nullable;
import org.standclear.core.text.BadInputException;
import org.standclear.core.text.NumberRule;
import org.standclear.core.text.Words;

/**
 * The words of one line: letters with their numbers.
 *
 * @param g the numbers of its G words, in order
 * @param m the numbers of its M words
 * @param values of all other letters, each at most once
 */
record Block(List<Integer> g, List<Integer> m, Map<Character, Double> values) {

    private static final int LONGEST = 1000;
    private static final String LETTERS = "NXYZCFIJRP";

    Block {
        g = List.copyOf(g);
        m = List.copyOf(m);
        values = Map.copyOf(values);
    }

    boolean isEmpty() {
        return g.isEmpty() && m.isEmpty() && values.isEmpty();
    }

    boolean has(char letter) {
        return values.containsKey(letter);
    }

    @Nullable
    Double get(char letter) {
        return values.get(letter);
    }

    boolean hasAnyOf(String letters) {
        return letters.chars().anyMatch(letter -> has((char) letter));
    }

    /** The content of a line that is nothing but comment. */
    static Optional<String> comment(String line) {
        String text = line.strip();
        if (text.startsWith(";")) {
            return Optional.of(text.substring(1));
        }
        return text.startsWith("(") && text.indexOf(')') == text.length() - 1
                ? Optional.of(text.substring(1, text.length() - 1))
                : Optional.empty();
    }

    /** The words of a line, its comments left out; empty when it holds anything else. */
    static Optional<Block> of(String line, int number) {
        return line.length() > LONGEST ? Optional.empty() : new Scan(line, number).block();
    }

    /** Goes through the characters of one line. */
    private static final class Scan {

        private final String line;
        private final int number;
        private final List<Integer> g = new ArrayList<>();
        private final List<Integer> m = new ArrayList<>();
        private final Map<Character, Double> values = new HashMap<>();
        private int at;

        Scan(String line, int number) {
            this.line = line;
            this.number = number;
        }

        Optional<Block> block() {
            while (at < line.length()) {
                char c = line.charAt(at);
                if (c == ';') {
                    break;
                }
                if (c == '(') {
                    int end = line.indexOf(')', at);
                    if (end < 0) {
                        return Optional.empty();
                    }
                    at = end + 1;
                } else if (c == ' ' || c == '\t') {
                    at++;
                } else if (!word(Character.toUpperCase(c))) {
                    return Optional.empty();
                }
            }
            return Optional.of(new Block(g, m, values));
        }

        private boolean word(char letter) {
            at++;
            while (at < line.length() && line.charAt(at) == ' ') {
                at++;
            }
            int from = at;
            while (at < line.length() && "+-.0123456789".indexOf(line.charAt(at)) >= 0) {
                at++;
            }
            String digits = line.substring(from, at);
            if (letter == 'G' || letter == 'M') {
                return code(letter == 'G' ? g : m, digits);
            }
            if (LETTERS.indexOf(letter) < 0 || !digits.matches("[-+]?([0-9]+\\.?[0-9]*|\\.[0-9]+)")) {
                return false;
            }
            double value = Double.parseDouble(digits);
            if (!NumberRule.ANY.accepts(value)) {
                throw new BadInputException(
                        number, letter + " is " + Words.quoted(digits) + "; write " + NumberRule.ANY.words());
            }
            return values.put(letter, value) == null;
        }

        private static boolean code(List<Integer> codes, String digits) {
            return digits.matches("[0-9]{1,3}") && codes.add(Integer.parseInt(digits));
        }
    }
}
