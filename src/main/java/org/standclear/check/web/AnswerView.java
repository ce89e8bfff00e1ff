package org.standclear.check.web;

import java.util.List;
import org.jspecify.annotations.Nullable;

/**
 * An answer in the words and numbers of its page.
 *
 * @param state the shape beside the answer: {@code within}, {@code outside} or {@code not-checkable}
 * @param fullPower what would happen if the power step were skipped; null when nothing is known
 */
record AnswerView(
        String state,
        String headline,
        String checkedAgainst,
        @Nullable String fullPower,
        List<FindingView> findings,
        List<FactView> motion,
        List<ColumnView> columns,
        List<StepView> steps,
        int stepsLeftOut,
        SourceView source) {

    /** Name and value. */
    record FactView(String name, String value) {}

    /**
     * One finding.
     *
     * @param value the number beside its limit; null when it has none
     * @param bound which of cell and course set the limit; null when only one does
     * @param where step and line in words; null when it concerns the whole
     * @param line to link to; null when it concerns the whole or the line is not shown
     */
    record FindingView(
            String outcome,
            String outcomeWords,
            String name,
            String says,
            @Nullable String value,
            @Nullable GaugeView gauge,
            @Nullable String bound,
            @Nullable String where,
            @Nullable Integer line) {}

    /** A bar in percent of its width. */
    record GaugeView(double percent, double limitPercent, boolean over) {}

    /** One row of the three columns. */
    record ColumnView(
            String item,
            @Nullable String declared,
            @Nullable String found,
            @Nullable String read,
            String state) {}

    /**
     * One step.
     *
     * @param key what the pictures call it
     */
    record StepView(
            String key,
            String number,
            String kind,
            int line,
            String duration,
            String held,
            String fullPower,
            String elbow,
            String fastest,
            boolean peak) {}

    /** The program's text, as far as it is shown. */
    record SourceView(List<SourceLine> lines, @Nullable String leftOut) {}

    /**
     * One line.
     *
     * @param gapBefore whether lines are left out before it
     * @param state of the worst finding on it; null when there is none
     * @param remark what was found on it
     */
    record SourceLine(
            int number,
            String text,
            boolean gapBefore,
            @Nullable String state,
            @Nullable String remark) {}
}
