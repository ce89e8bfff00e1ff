package org.standclear.check.picture;

import java.util.HashSet;
import java.util.Set;
import org.standclear.core.check.CheckAnswer;
import org.standclear.core.limits.Finding;

/** The steps by their numbers that something was found at which is not within limits. */
record Troubled(Set<Integer> steps) {

    Troubled {
        steps = Set.copyOf(steps);
    }

    static Troubled in(CheckAnswer answer) {
        Set<Integer> steps = new HashSet<>();
        for (Finding finding : answer.findings()) {
            Integer step = finding.details().step();
            boolean passes = finding instanceof Finding.Within || finding instanceof Finding.Notice;
            if (step != null && !passes) {
                steps.add(step);
            }
        }
        return new Troubled(steps);
    }

    boolean isAt(int step) {
        return steps.contains(step);
    }
}
