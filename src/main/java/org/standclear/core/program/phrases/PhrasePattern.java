package org.standclear.core.program.phrases;

import com.google.re2j.Matcher;
import com.google.re2j.Pattern;
import com.google.re2j.PatternSyntaxException;
import java.util.ArrayList;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.standclear.core.text.BadInputException;
import org.standclear.core.text.Words;

/**
 * A pattern of a phrasebook: a regular expression of the RE2 syntax for a whole line, with {@code {part}} for a named
 * part and a space for any white space. The engine needs time in proportion to the line, whatever the pattern.
 */
final class PhrasePattern {

    private static final int LONGEST = 500;

    /** Counted repetitions multiply the size of the engine's program. */
    private static final int MOST_REPEATED = 200;

    private static final java.util.regex.Pattern COUNTED =
            java.util.regex.Pattern.compile("\\{([0-9]{1,9})(?:,([0-9]{0,9}))?\\}");
    private static final java.util.regex.Pattern PLACEHOLDER =
            java.util.regex.Pattern.compile("\\{([a-z][a-z0-9-]*)\\}");

    private final Pattern pattern;
    private final List<Part> parts;
    private final String prefix;
    private final boolean ignoresCase;

    PhrasePattern(String written, boolean ignoresCase, int line) {
        requireSize(written, line);
        String expression = spaced(withParts(written, line));
        try {
            this.pattern = Pattern.compile(expression, ignoresCase ? Pattern.CASE_INSENSITIVE : 0);
        } catch (PatternSyntaxException e) {
            throw new BadInputException(
                    line,
                    "the pattern is not a regular expression: " + Words.quoted(e.getDescription()) + " at "
                            + Words.quoted(String.valueOf(e.getPattern())));
        }
        this.ignoresCase = ignoresCase;
        this.prefix = prefix(written);
        this.parts = new ArrayList<>();
        for (String name : pattern.namedGroups().keySet()) {
            parts.add(Part.of(name).orElseThrow(() -> unknown(name, line)));
        }
    }

    private static void requireSize(String written, int line) {
        long repeated = 1;
        java.util.regex.Matcher counted = COUNTED.matcher(written);
        while (counted.find() && repeated <= MOST_REPEATED) {
            String most = counted.group(2) == null || counted.group(2).isEmpty() ? counted.group(1) : counted.group(2);
            repeated *= Math.max(1, Long.parseLong(most));
        }
        if (written.length() > LONGEST || repeated > MOST_REPEATED) {
            throw new BadInputException(
                    line,
                    "the pattern is too large; write at most " + LONGEST + " characters and repeat at most "
                            + MOST_REPEATED + " times");
        }
    }

    private static String withParts(String written, int line) {
        StringBuilder expression = new StringBuilder();
        java.util.regex.Matcher placeholder = PLACEHOLDER.matcher(written);
        while (placeholder.find()) {
            String name = placeholder.group(1);
            Part part = Part.of(name).orElseThrow(() -> unknown(name, line));
            placeholder.appendReplacement(expression, java.util.regex.Matcher.quoteReplacement(part.group()));
        }
        return placeholder.appendTail(expression).toString();
    }

    private static BadInputException unknown(String name, int line) {
        List<String> names =
                java.util.Arrays.stream(Part.values()).map(Part::word).toList();
        return new BadInputException(
                line, "the pattern names the part " + Words.quoted(name) + "; parts are " + Words.allOf(names));
    }

    /** A space outside of brackets stands for any white space. */
    private static String spaced(String expression) {
        StringBuilder spaced = new StringBuilder();
        boolean bracket = false;
        for (int i = 0; i < expression.length(); i++) {
            char c = expression.charAt(i);
            if (c == '\\' && i + 1 < expression.length()) {
                spaced.append(c).append(expression.charAt(++i));
                continue;
            }
            bracket = c == '[' || bracket && c != ']';
            spaced.append(c == ' ' && !bracket ? "[ \\t]+" : String.valueOf(c));
        }
        return spaced.toString();
    }

    /** The letters with which every line of this pattern begins: most patterns need not be tried on most lines. */
    private static String prefix(String written) {
        int end = 0;
        while (end < written.length() && Character.isLetterOrDigit(written.charAt(end))) {
            end++;
        }
        boolean isOptional = end < written.length() && "?*+{".indexOf(written.charAt(end)) >= 0;
        return written.indexOf('|') >= 0 ? "" : written.substring(0, Math.max(0, isOptional ? end - 1 : end));
    }

    List<Part> parts() {
        return List.copyOf(parts);
    }

    /** What it costs to try it on a line, in characters of the line times places of the pattern. */
    long cost(String line) {
        return mayMatch(line) ? (long) (line.length() + 1) * pattern.programSize() : 1;
    }

    private boolean mayMatch(String line) {
        return line.regionMatches(ignoresCase, 0, prefix, 0, prefix.length());
    }

    /** The parts as they stand in a line; empty when the line is another one. */
    Optional<Map<Part, String>> match(String line) {
        if (!mayMatch(line)) {
            return Optional.empty();
        }
        Matcher matcher = pattern.matcher(line);
        if (!matcher.matches()) {
            return Optional.empty();
        }
        Map<Part, String> found = new EnumMap<>(Part.class);
        for (Part part : parts) {
            String value = matcher.group(part.word());
            if (value != null) {
                found.put(part, value.strip());
            }
        }
        return Optional.of(found);
    }
}
