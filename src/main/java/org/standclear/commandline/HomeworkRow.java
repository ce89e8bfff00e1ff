package org.standclear.commandline;

import java.util.List;
import org.jspecify.annotations.Nullable;
import org.standclear.core.check.CheckAnswer;
import org.standclear.core.limits.Details;
import org.standclear.core.limits.Finding;
import org.standclear.core.program.MotionPlan;

/**
 * What came of one program of a folder.
 *
 * @param answer in a word; {@code unreadable} when there is none
 * @param why the first thing that keeps it from being within limits, or from being read
 */
record HomeworkRow(
        String file,
        String answer,
        @Nullable String title,
        @Nullable String reader,
        @Nullable Integer linesUnderstood,
        @Nullable Integer linesTotal,
        @Nullable Double cycleS,
        @Nullable Double toolPeakMmS,
        @Nullable Double fastestMmS,
        int cautions,
        @Nullable String check,
        @Nullable Integer line,
        String why,
        @Nullable String sha256) {

    private static final String UNREADABLE = "unreadable";

    static HomeworkRow of(String file, CheckAnswer answer) {
        MotionPlan plan = answer.program().plan();
        Details first =
                answer.blocking().stream().findFirst().map(Finding::details).orElse(null);
        return new HomeworkRow(
                file,
                answer.answer().word(),
                plan.title(),
                plan.reader(),
                plan.coverage().linesUnderstood(),
                plan.coverage().linesTotal(),
                answer.motion().cycleTimeS(),
                answer.figures().toolPeakMmS(),
                answer.figures().fastestMmS(),
                answer.cautions().size(),
                first == null ? null : first.check().word(),
                first == null ? null : first.line(),
                first == null ? "" : first.says(),
                answer.sha256());
    }

    static HomeworkRow unreadable(String file, String why) {
        return new HomeworkRow(file, UNREADABLE, null, null, null, null, null, null, null, 0, null, null, why, null);
    }

    boolean has(String word) {
        return answer.equals(word);
    }

    /** The exit status for all rows together. */
    static int status(List<HomeworkRow> rows) {
        if (rows.stream().anyMatch(row -> row.has(UNREADABLE))) {
            return Commands.WRONG_USAGE;
        }
        return rows.stream().anyMatch(row -> row.has(CheckAnswer.Answer.OUTSIDE.word()))
                ? CheckCommand.status(CheckAnswer.Answer.OUTSIDE)
                : rows.stream().allMatch(row -> row.has(CheckAnswer.Answer.WITHIN.word()))
                        ? CheckCommand.status(CheckAnswer.Answer.WITHIN)
                        : CheckCommand.status(CheckAnswer.Answer.NOT_CHECKABLE);
    }
}
