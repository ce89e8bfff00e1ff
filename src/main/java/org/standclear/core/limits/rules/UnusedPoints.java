package org.standclear.core.limits.rules;

import java.util.List;
import java.util.Set;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.standclear.core.limits.Check;
import org.standclear.core.limits.CheckedProgram;
import org.standclear.core.limits.Details;
import org.standclear.core.limits.Finding;
import org.standclear.core.limits.LimitRule;
import org.standclear.core.program.Point;
import org.standclear.core.program.Step;
import org.standclear.core.text.Words;

/** Points that no step uses are not checked; names them. */
final class UnusedPoints implements LimitRule {

    private static final int MOST_NAMED = 10;

    @Override
    public Stream<Finding> findings(CheckedProgram program) {
        Set<String> used = program.plan().steps().stream()
                .filter(Step.Moving.class::isInstance)
                .map(step -> ((Step.Moving) step).target().name())
                .collect(Collectors.toSet());
        Point start = program.motion().start();
        List<Point> unused = program.plan().points().values().stream()
                .filter(point -> !used.contains(point.name()) && !point.equals(start))
                .toList();
        if (unused.isEmpty()) {
            return Stream.empty();
        }
        String names = Words.allOf(unused.stream()
                .limit(MOST_NAMED)
                .map(point -> Words.quoted(point.name()))
                .toList());
        String more = unused.size() > MOST_NAMED ? " and " + (unused.size() - MOST_NAMED) + " more" : "";
        String says = "No step uses " + names + more + "; not checked.";
        return Stream.of(new Finding.Notice(
                Details.of(Check.UNUSED_POINTS, says).onLine(unused.get(0).line())));
    }
}
