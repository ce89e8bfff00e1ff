package org.standclear.core.limits.rules;

import java.util.stream.Stream;
import org.standclear.core.limits.Check;
import org.standclear.core.limits.CheckedProgram;
import org.standclear.core.limits.Details;
import org.standclear.core.limits.Finding;
import org.standclear.core.limits.LimitRule;
import org.standclear.core.program.MotionPlan;
import org.standclear.core.text.Words;

/** The reader understood every line that is not a comment (house rule). */
final class Coverage implements LimitRule {

    private static final int MOST_NAMED = 10;

    @Override
    public Stream<Finding> findings(CheckedProgram program) {
        MotionPlan.Coverage coverage = program.plan().coverage();
        if (coverage.notUnderstood().isEmpty()) {
            return Stream.of(new Finding.Within(Details.of(
                    Check.COVERAGE, "All " + coverage.linesTotal() + " lines that are not comments are understood.")));
        }
        String lines = Words.allOf(coverage.notUnderstood().stream()
                .limit(MOST_NAMED)
                .map(String::valueOf)
                .toList());
        String more = coverage.notUnderstood().size() > MOST_NAMED ? " and more" : "";
        String says = coverage.linesUnderstood() + " of " + coverage.linesTotal()
                + " lines are understood; not understood: " + lines + more + ". Write them in a way the reader knows.";
        return Stream.of(new Finding.Outside(
                Details.of(Check.COVERAGE, says).onLine(coverage.notUnderstood().get(0))));
    }
}
