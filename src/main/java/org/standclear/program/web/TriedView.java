package org.standclear.program.web;

import java.util.List;
import java.util.Map;
import org.jspecify.annotations.Nullable;
import org.standclear.core.program.MotionPlan;
import org.standclear.core.program.phrases.LineMeaning;
import org.standclear.core.program.phrases.Phrasebook;
import org.standclear.core.program.phrases.PhrasebookReader;
import org.standclear.core.text.BadInput;
import org.standclear.core.text.Reading;

/**
 * What the lines of a program mean by a phrasebook.
 *
 * @param headline how many lines are understood, and what is wrong with the program as a whole
 * @param more how many further lines are not shown; null when none
 */
record TriedView(
        boolean whole,
        String headline,
        List<LineMeaning> lines,
        @Nullable String more) {

    private static final int MOST_SHOWN = 500;
    private static final int MOST_UNKNOWN = 20;

    /** Null, with an error noted, when the text is not one that can be read line by line. */
    static @Nullable TriedView of(Phrasebook book, String program, Map<String, String> errors) {
        Reading<List<LineMeaning>> meanings = book.meanings(program);
        if (meanings.badInput().isPresent()) {
            errors.put("program", sentence(meanings.badInput().get()));
            return null;
        }
        List<LineMeaning> lines = meanings.value();
        long unknown = lines.stream().filter(line -> !line.understood()).count();
        Reading<MotionPlan> plan = new PhrasebookReader(book).read(program);
        String counted = lines.size() - unknown + " of " + lines.size() + " lines are understood.";
        String headline = plan.badInput()
                .map(bad -> counted + " The program as a whole cannot be read. " + sentence(bad))
                .orElseGet(() ->
                        counted + " It has " + plan.value().steps().size() + " steps." + notUnderstood(plan.value()));
        int left = lines.size() - MOST_SHOWN;
        return new TriedView(
                unknown == 0 && plan.badInput().isEmpty(),
                headline,
                lines.stream().limit(MOST_SHOWN).toList(),
                left > 0 ? left + " more lines are not shown." : null);
    }

    /** The first lines that have no meaning. */
    public List<LineMeaning> unknown() {
        return lines.stream()
                .filter(line -> !line.understood())
                .limit(MOST_UNKNOWN)
                .toList();
    }

    private static String notUnderstood(MotionPlan plan) {
        List<String> lines = plan.coverage().notUnderstood().stream()
                .limit(10)
                .map(String::valueOf)
                .toList();
        return lines.isEmpty() ? "" : " The check will not pass it because of line " + String.join(", ", lines) + ".";
    }

    static String sentence(BadInput bad) {
        String sentence = bad.sentence();
        return Character.toUpperCase(sentence.charAt(0)) + sentence.substring(1) + (sentence.endsWith(".") ? "" : ".");
    }
}
