package org.standclear.check;

import java.util.List;
import org.jspecify.annotations.Nullable;

/**
 * What an answer's page shows.
 *
 * @param json the answer, {@code answer-format: 1}, with the first steps of a long program only
 * @param stepsLeftOut how many steps are left out of it
 * @param columns declared and found, item by item
 * @param bounds which limit counted where cell and course both set one
 */
public record AnswerDetails(String json, int stepsLeftOut, List<Column> columns, List<Bound> bounds) {

    public AnswerDetails {
        columns = List.copyOf(columns);
        bounds = List.copyOf(bounds);
    }

    /**
     * One item that is declared, found in the file, and later read at the bench.
     *
     * @param declared with its unit; null when not declared
     * @param found with its unit and line; null when the file does not say
     */
    public record Column(
            String item,
            @Nullable String declared,
            @Nullable String found,
            boolean agrees) {}

    /**
     * A limit that cell and course both set.
     *
     * @param check the code of the finding it counts for
     * @param says which of the two counted, and what the other one is
     */
    public record Bound(String check, String says) {}
}
