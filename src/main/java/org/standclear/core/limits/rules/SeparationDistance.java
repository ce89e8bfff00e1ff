package org.standclear.core.limits.rules;

import static org.standclear.core.quantity.ShownNumber.plain;
import static org.standclear.core.quantity.ShownNumber.up;

import java.util.stream.Stream;
import org.standclear.core.cell.SeparationLimit;
import org.standclear.core.limits.Check;
import org.standclear.core.limits.CheckedProgram;
import org.standclear.core.limits.Details;
import org.standclear.core.limits.Finding;
import org.standclear.core.limits.LimitRule;
import org.standclear.core.limits.LimitSource;
import org.standclear.core.limits.MotionFigures;
import org.standclear.core.quantity.Tolerance;

/**
 * The stand line is at least the largest radius and the separation distance away (ISO/TS 15066:2016 5.5.4, ISO 13855).
 * The largest radius is the larger of the tool point's with the overhang and the arm's own.
 */
final class SeparationDistance implements LimitRule {

    @Override
    public Stream<Finding> findings(CheckedProgram program) {
        SeparationLimit limit = program.cell().limits().separation();
        MotionFigures figures = program.figures();
        Double separation = figures.knownSeparationMm();
        if (limit == null || separation == null) {
            return Stream.of(new Finding.Notice(Details.of(Check.SEPARATION, "No limit set for separation.")));
        }
        String middle = program.cell().arm().middle();
        double radius = figures.farthestMm(program.cell());
        double needed = radius + separation;
        double standLine = program.cell().limits().standLineMm();
        if (Tolerance.isOutside(needed - standLine)) {
            String says = "A person needs " + up(needed, 1) + " mm from " + middle + " (" + up(radius, 1)
                    + " mm for the arm and " + up(separation, 1) + " mm to keep away); the stand line is at "
                    + plain(standLine) + " mm. Go slower, or stay nearer to " + middle + ".";
            return Stream.of(Finding.notKept(limit.rule(), details(needed, standLine, says)));
        }
        if (!figures.speedsComplete() || !figures.waysComplete()) {
            return Stream.of(new Finding.NotCheckable(
                    Details.of(Check.SEPARATION, Places.missingSpeeds(program)), limit.rule()));
        }
        String says = "A person needs " + up(needed, 1) + " mm from " + middle + "; the stand line is at "
                + plain(standLine) + " mm.";
        return Stream.of(new Finding.Within(details(needed, standLine, says)));
    }

    private static Details details(double needed, double standLine, String says) {
        return Details.of(Check.SEPARATION, says)
                .comparing(needed, standLine, "mm")
                .from(LimitSource.CELL);
    }
}
