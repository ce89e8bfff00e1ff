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
import org.standclear.core.program.Found;
import org.standclear.core.program.Step;
import org.standclear.core.quantity.Tolerance;

/** Nothing in the file contradicts the declaration (house rule). */
final class DeclarationAgreement implements LimitRule {

    @Override
    public Stream<Finding> findings(CheckedProgram program) {
        Optional<Finding> contradiction = contradiction(program).or(() -> tooFast(program));
        return Stream.of(contradiction.orElseGet(() -> new Finding.Within(
                Details.of(Check.DECLARED_MATCHES_FOUND, "Nothing in the file contradicts the declaration."))));
    }

    private static Optional<Finding> contradiction(CheckedProgram program) {
        return program.declared().found().stream()
                .flatMap(found -> contradiction(program, found).stream())
                .findFirst();
    }

    private static Optional<Finding> contradiction(CheckedProgram program, Found found) {
        DeclarationField field = found.field();
        Object declared = field.in(program.declaration());
        if (declared != null && field.agree(declared, found.value())) {
            return Optional.empty();
        }
        String says = "The file says " + field.word() + " " + field.shown(found.value()) + "; declared is "
                + (declared == null ? "nothing" : field.shown(declared))
                + ". Change the one that is wrong, so that both agree.";
        return Optional.of(new Finding.Outside(
                Details.of(Check.DECLARED_MATCHES_FOUND, says).onLine(found.line() == 0 ? null : found.line())));
    }

    private static Optional<Finding> tooFast(CheckedProgram program) {
        Double declared = program.declaration().maxToolSpeedMmS();
        if (declared == null) {
            return Optional.empty();
        }
        return program.plan().steps().stream()
                .filter(step -> step instanceof Step.Paced paced && !Tolerance.isWithin(paced.speedMmS(), declared))
                .map(Step.Paced.class::cast)
                .<Finding>map(step -> new Finding.Outside(tooFast(step, declared)))
                .findFirst();
    }

    private static Details tooFast(Step.Paced step, double declared) {
        String says = "Step " + step.number() + " asks for " + plain(step.speedMmS()) + " mm/s; declared are "
                + plain(declared) + " mm/s at most. Lower the speed of the step, or declare the speed it has.";
        return Details.of(Check.DECLARED_MATCHES_FOUND, says)
                .comparing(step.speedMmS(), declared, "mm/s")
                .atStep(step.number(), step.line());
    }
}
