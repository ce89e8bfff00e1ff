package org.standclear.core.limits.rules;

import static org.standclear.core.quantity.ShownNumber.plain;
import static org.standclear.core.quantity.ShownNumber.up;

import java.util.Optional;
import java.util.stream.Stream;
import org.standclear.core.arm.Arm;
import org.standclear.core.cell.CellLimits;
import org.standclear.core.limits.Check;
import org.standclear.core.limits.CheckedProgram;
import org.standclear.core.limits.Details;
import org.standclear.core.limits.Finding;
import org.standclear.core.limits.LimitRule;
import org.standclear.core.limits.LimitSource;
import org.standclear.core.motion.FastestPart;
import org.standclear.core.motion.Peaks;
import org.standclear.core.motion.StepMotion;
import org.standclear.core.quantity.Tolerance;

/** The held peak of the fastest part is at or below the limit (ISO 10218-2:2025 5.5.6.1, as quoted publicly). */
final class MovingPartSpeedLimit implements LimitRule {

    @Override
    public Stream<Finding> findings(CheckedProgram program) {
        CellLimits limits = program.cell().limits();
        Double limit = limits.movingPartSpeedMmS();
        if (limit == null) {
            return Stream.of(new Finding.Notice(
                    Details.of(Check.MOVING_PART_SPEED, "No limit set for the speed of moving parts.")));
        }
        double fastest = program.figures().knownFastestMmS();
        Optional<StepMotion> at = program.motion().stepOfGreatest(Peaks::fastest);
        if (!Tolerance.isWithin(fastest, limit)) {
            String says = part(program.cell().arm(), at) + " reaches " + up(fastest, 1) + " mm/s" + Places.in(at) + "; "
                    + plain(limit)
                    + " mm/s is the limit of the cell for moving parts. Lower the speed of the step, or the override"
                    + advice(at) + "." + counted(program.cell().arm());
            return Stream.of(Finding.notKept(limits.movingPartRule(), details(fastest, limit, at, says)));
        }
        if (!program.figures().speedsComplete()) {
            return Stream.of(new Finding.NotCheckable(
                    Details.of(Check.MOVING_PART_SPEED, Places.missingSpeeds(program))
                            .comparing(null, limit, "mm/s"),
                    limits.movingPartRule()));
        }
        String says = "The fastest part is held to " + up(fastest, 1) + " mm/s of " + plain(limit)
                + " mm/s, the limit of the cell for moving parts."
                + counted(program.cell().arm());
        return Stream.of(new Finding.Within(details(fastest, limit, at, says)));
    }

    /** What counted, where it is not the tool and an elbow alone. */
    private static String counted(Arm arm) {
        return arm.linkEnds() > 1
                ? " Counted are the tool point, the overhang and the ends of all links; how far a casing stands out from"
                        + " its link is not."
                : "";
    }

    private static String part(Arm arm, Optional<StepMotion> at) {
        return switch (part(at, FastestPart.TOOL)) {
            case TOOL -> "The tool point";
            case ELBOW -> arm.linkEnds() > 1 ? "The fastest end of a link" : "The elbow";
            case OVERHANG -> "The farthest part of tool and part";
        };
    }

    private static String advice(Optional<StepMotion> at) {
        return part(at, FastestPart.TOOL) == FastestPart.OVERHANG ? ", or turn the tool less in it" : "";
    }

    private static FastestPart part(Optional<StepMotion> at, FastestPart otherwise) {
        return at.map(StepMotion::peaks).map(Peaks::part).orElse(otherwise);
    }

    private static Details details(double fastest, double limit, Optional<StepMotion> at, String says) {
        Details details = Details.of(Check.MOVING_PART_SPEED, says)
                .comparing(fastest, limit, "mm/s")
                .from(LimitSource.CELL);
        return Places.at(details, at);
    }
}
