package org.standclear.core;

import java.util.List;
import org.standclear.core.check.CheckAnswer;
import org.standclear.core.limits.Check;
import org.standclear.core.limits.Details;
import org.standclear.core.limits.Finding;

/** Looks findings up in an answer. */
public final class Outcomes {

    private Outcomes() {}

    /** The findings of a check. */
    public static List<Finding> of(CheckAnswer answer, Check check) {
        return answer.findings().stream()
                .filter(finding -> finding.details().check() == check)
                .toList();
    }

    /** The outcome of the first finding of a check. */
    public static String outcome(CheckAnswer answer, Check check) {
        return of(answer, check).get(0).outcome();
    }

    /** The details of the first finding of a check. */
    public static Details details(CheckAnswer answer, Check check) {
        return of(answer, check).get(0).details();
    }
}
