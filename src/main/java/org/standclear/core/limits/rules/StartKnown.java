package org.standclear.core.limits.rules;

import java.util.stream.Stream;
import org.standclear.core.limits.Check;
import org.standclear.core.limits.CheckedProgram;
import org.standclear.core.limits.Details;
import org.standclear.core.limits.Finding;
import org.standclear.core.limits.LimitRule;
import org.standclear.core.motion.StepMotion;
import org.standclear.core.program.DeclarationField;

/** The program says where the arm stands before its first move; else the way of that move is not known. */
final class StartKnown implements LimitRule {

    @Override
    public Stream<Finding> findings(CheckedProgram program) {
        return Stream.of(program.motion().steps().stream()
                .filter(StepMotion::fromUnknownStart)
                .findFirst()
                .map(StartKnown::unknown)
                .orElseGet(() -> known(program)));
    }

    private static Finding unknown(StepMotion first) {
        String says = "Nothing says where the arm stands before step " + first.step()
                + ", so the way of that step is not known. Write start: with the name of a point, in the sheet or in the"
                + " declaration; the other checks were made on the rest.";
        return Finding.notCheckable(Details.of(Check.START, says).atStep(first.step(), first.line()));
    }

    private static Finding known(CheckedProgram program) {
        String start = program.declaration().start();
        String says = start == null ? "The arm does not move." : "The arm starts at " + start + ".";
        return new Finding.Within(
                Details.of(Check.START, says).onLine(program.declared().lineOf(DeclarationField.START)));
    }
}
