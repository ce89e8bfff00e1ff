package org.standclear.core.limits;

import java.util.stream.Stream;

/** One rule of the check. */
@FunctionalInterface
public interface LimitRule {

    /** What the rule finds. */
    Stream<Finding> findings(CheckedProgram program);
}
