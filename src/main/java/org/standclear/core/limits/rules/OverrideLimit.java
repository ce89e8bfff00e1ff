package org.standclear.core.limits.rules;

import static org.standclear.core.quantity.ShownNumber.plain;
import static org.standclear.core.quantity.ShownNumber.up;

import java.util.Comparator;
import java.util.Optional;
import java.util.stream.Stream;
import org.standclear.core.limits.Check;
import org.standclear.core.limits.CheckedProgram;
import org.standclear.core.limits.Details;
import org.standclear.core.limits.Finding;
import org.standclear.core.limits.LimitInForce;
import org.standclear.core.limits.LimitRule;
import org.standclear.core.program.DeclarationField;
import org.standclear.core.program.Found;
import org.standclear.core.quantity.Tolerance;

/** The declared override, and every one that the file sets, is at or below the limit (house rule; 50 % is common). */
final class OverrideLimit implements LimitRule {

    @Override
    public Stream<Finding> findings(CheckedProgram program) {
        LimitInForce limit = program.overrideLimit();
        Double declared = program.declaration().overridePercent();
        Optional<Found> highest = program.declared().found(DeclarationField.OVERRIDE).stream()
                .max(Comparator.comparingDouble(found -> (Double) found.value()));
        double found = highest.map(one -> (Double) one.value()).orElse(0.0);
        if (highest.isPresent()
                && !Tolerance.isWithin(found, limit.value())
                && (declared == null || found > declared)) {
            String says = "The file sets the override to " + plain(found) + " %; " + plain(limit.value()) + " % is "
                    + limit.words() + ". Lower it in the file.";
            return Stream.of(new Finding.Outside(
                    details(found, limit, says).onLine(highest.get().line())));
        }
        if (declared == null) {
            return Stream.of(Finding.notCheckable(Details.of(
                            Check.OVERRIDE,
                            "No override is declared, so 100 % was computed with. Declare override-percent: "
                                    + plain(limit.value()) + " or less.")
                    .comparing(null, limit.value(), "%")
                    .from(limit.from())));
        }
        double observed = Math.max(declared, found);
        Integer line = program.declared().lineOf(DeclarationField.OVERRIDE);
        if (!Tolerance.isWithin(observed, limit.value())) {
            String says = "The declared override is " + up(declared, 1) + " %; " + plain(limit.value()) + " % is "
                    + limit.words() + ". Declare " + plain(limit.value()) + " % or less, and set it at the robot.";
            return Stream.of(new Finding.Outside(details(observed, limit, says).onLine(line)));
        }
        String says = "Override " + up(observed, 1) + " % of " + plain(limit.value()) + " %, " + limit.words() + ".";
        return Stream.of(new Finding.Within(details(observed, limit, says)));
    }

    private static Details details(double observed, LimitInForce limit, String says) {
        return Details.of(Check.OVERRIDE, says)
                .comparing(observed, limit.value(), "%")
                .from(limit.from());
    }
}
