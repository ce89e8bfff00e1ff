package org.standclear.core.limits.rules;

import static org.standclear.core.quantity.ShownNumber.plain;
import static org.standclear.core.quantity.ShownNumber.up;

import java.util.Optional;
import java.util.stream.Stream;
import org.standclear.core.limits.Check;
import org.standclear.core.limits.CheckedProgram;
import org.standclear.core.limits.Details;
import org.standclear.core.limits.Finding;
import org.standclear.core.limits.LimitInForce;
import org.standclear.core.limits.LimitRule;
import org.standclear.core.motion.Peaks;
import org.standclear.core.motion.StepMotion;
import org.standclear.core.quantity.Tolerance;

/** The held peak of the tool point is at or below the limit (ISO 10218-1 reduced speed, 250 mm/s). */
final class ToolSpeedLimit implements LimitRule {

    @Override
    public Stream<Finding> findings(CheckedProgram program) {
        LimitInForce limit = program.toolSpeedLimit();
        double peak = program.figures().knownToolPeakMmS();
        Optional<StepMotion> at = program.motion().stepOfGreatest(Peaks::heldTool);
        if (!Tolerance.isWithin(peak, limit.value())) {
            String says =
                    "The tool point reaches " + up(peak, 1) + " mm/s" + Places.in(at) + "; " + plain(limit.value())
                            + " mm/s is " + limit.words() + ". Lower the speed of the step, or the override.";
            return Stream.of(new Finding.Outside(details(peak, limit, at, says)));
        }
        if (!program.figures().speedsComplete()) {
            return Stream.of(Finding.notCheckable(Details.of(Check.TOOL_SPEED, Places.missingSpeeds(program))
                    .comparing(null, limit.value(), "mm/s")
                    .from(limit.from())));
        }
        String says = "The tool point is held to " + up(peak, 1) + " mm/s of " + plain(limit.value()) + " mm/s, "
                + limit.words() + ".";
        return Stream.of(new Finding.Within(details(peak, limit, at, says)));
    }

    private static Details details(double peak, LimitInForce limit, Optional<StepMotion> at, String says) {
        Details details = Details.of(Check.TOOL_SPEED, says)
                .comparing(peak, limit.value(), "mm/s")
                .from(limit.from());
        return Places.at(details, at);
    }
}
