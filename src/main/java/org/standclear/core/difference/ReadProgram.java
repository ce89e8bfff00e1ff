package org.standclear.core.difference;

import org.jspecify.annotations.Nullable;
import org.standclear.core.program.Declaration;
import org.standclear.core.program.Declared;
import org.standclear.core.program.MotionPlan;

/** One revision as it was understood: its plan, and what counts as declared and as found. */
public record ReadProgram(MotionPlan plan, Declared declared) {

    /** A plan with a separate declaration, or none. */
    public static ReadProgram of(MotionPlan plan, @Nullable Declaration separate) {
        return new ReadProgram(plan, Declared.of(separate, plan));
    }
}
