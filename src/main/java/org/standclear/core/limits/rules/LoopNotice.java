package org.standclear.core.limits.rules;

import static org.standclear.core.quantity.ShownNumber.plain;

import java.util.Optional;
import java.util.stream.Stream;
import org.standclear.core.limits.Check;
import org.standclear.core.limits.CheckedProgram;
import org.standclear.core.limits.Details;
import org.standclear.core.limits.Finding;
import org.standclear.core.limits.LimitRule;
import org.standclear.core.program.DeclarationField;
import org.standclear.core.program.Loop;
import org.standclear.core.program.Step;

/** What to know of a program that goes round; never more than a notice (house rule). */
final class LoopNotice implements LimitRule {

    /** A wait of this length or more looks like a stop. */
    private static final double LONG_WAIT_S = 2;

    @Override
    public Stream<Finding> findings(CheckedProgram program) {
        Loop loop = program.declaration().loop();
        if (loop == null || !loop.repeats()) {
            return Stream.empty();
        }
        Stream<Finding> loops = Stream.of(notice(
                        loop.forever()
                                ? "Loops until somebody stops it: attended throughout, hands away while it runs."
                                : "Runs " + loop.passes() + " passes, each closed by a move back to its first step.")
                .map(details -> details.onLine(program.declared().lineOf(DeclarationField.LOOP))));
        return Stream.of(loops, longWait(program), windsUp(program)).flatMap(findings -> findings);
    }

    private record Noted(Details details) {
        Finding map(java.util.function.UnaryOperator<Details> change) {
            return new Finding.Notice(change.apply(details));
        }
    }

    private static Noted notice(String says) {
        return new Noted(Details.of(Check.LOOP, says));
    }

    private static Stream<Finding> longWait(CheckedProgram program) {
        Optional<Step.Wait> wait = program.plan().steps().stream()
                .filter(step -> step instanceof Step.Wait one && one.seconds() >= LONG_WAIT_S)
                .map(Step.Wait.class::cast)
                .findFirst();
        return wait
                .map(one -> notice("Step " + one.number() + " waits " + plain(one.seconds())
                                + " s inside a loop: that is not a stop, the arm moves again by itself.")
                        .map(details -> details.atStep(one.number(), one.line())))
                .stream();
    }

    private static Stream<Finding> windsUp(CheckedProgram program) {
        if (!program.motion().windsUp()) {
            return Stream.empty();
        }
        return Stream.of(notice("The move that closes the loop ends the wrist on another turn than the first step did:"
                        + " it winds up, and later passes differ from the one that was computed.")
                .map(details -> details));
    }
}
