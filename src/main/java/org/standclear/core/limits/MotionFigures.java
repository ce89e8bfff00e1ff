package org.standclear.core.limits;

import java.util.Optional;
import java.util.stream.Stream;
import org.jspecify.annotations.Nullable;
import org.standclear.core.cell.ArmFacts;
import org.standclear.core.cell.CellDescription;
import org.standclear.core.cell.SeparationLimit;
import org.standclear.core.geometry.Vector;
import org.standclear.core.motion.Peaks;
import org.standclear.core.motion.ProgramMotion;
import org.standclear.core.motion.StepMotion;

/**
 * Figures of a whole program. What is known may be less than all: then the totals are null, and the known part only
 * serves to say that a limit is exceeded already.
 *
 * @param knownFastestMmS the fastest part over the moves that are known
 * @param knownOwnRadiusMm the largest horizontal distance of the arm's own link ends, where they depend on the way
 * @param knownRadiusMm the largest horizontal distance of the tool point over the ways that are known
 */
public record MotionFigures(
        boolean speedsComplete,
        boolean waysComplete,
        double knownToolPeakMmS,
        double knownFastestMmS,
        double knownFullPowerPeakMmS,
        double knownRadiusMm,
        double knownOwnRadiusMm,
        @Nullable Double knownSeparationMm,
        ArmFacts arm) {

    private static final double HALF = 0.5;

    static MotionFigures of(CellDescription cell, ProgramMotion motion) {
        double fastest = motion.greatestKnown(Peaks::fastest);
        boolean waysComplete = motion.steps().stream()
                .filter(step -> step.isMove() && !step.fromUnknownStart())
                .allMatch(step -> step.trace() != null);
        return new MotionFigures(
                !motion.hasUnknown(),
                waysComplete,
                motion.greatestKnown(Peaks::heldTool),
                fastest,
                motion.greatestKnown(Peaks::fullPowerTool),
                radius(motion),
                ownRadius(motion),
                separation(cell, fastest),
                cell.armFacts());
    }

    private static double radius(ProgramMotion motion) {
        Stream<Double> start = Optional.ofNullable(motion.start()).stream()
                .map(point -> point.pose().place().horizontal());
        Stream<Double> moves =
                motion.steps().stream().filter(StepMotion::isMove).map(MotionFigures::radius);
        return Stream.concat(start, moves).mapToDouble(radius -> radius).max().orElse(0);
    }

    private static double ownRadius(ProgramMotion motion) {
        return motion.steps().stream()
                .flatMap(step -> Optional.ofNullable(step.trace()).stream())
                .mapToDouble(trace -> trace.path().ownRadius())
                .max()
                .orElse(0);
    }

    private static double radius(StepMotion step) {
        double there = step.target() == null ? 0 : step.target().pose().place().horizontal();
        return step.trace() == null
                ? there
                : Math.max(
                        there,
                        new PathSearch(step.trace().path())
                                .greatest(Vector::horizontal)
                                .value());
    }

    /**
     * S_p = v_h (T_r + T_s) + v_r T_r + v_r T_s / 2 + C + Z_d + Z_r, mm (ISO/TS 15066:2016 5.5.4); null when the cell
     * gives nothing to compute it from.
     */
    private static @Nullable Double separation(CellDescription cell, double robotSpeed) {
        SeparationLimit limit = cell.limits().separation();
        if (limit == null) {
            return null;
        }
        double reaction = cell.armFacts().reactionS();
        double stopping = cell.armFacts().stoppingS();
        return limit.humanSpeedMmS() * (reaction + stopping)
                + robotSpeed * reaction
                + robotSpeed * stopping * HALF
                + limit.intrusionMm()
                + limit.personUncertaintyMm()
                + limit.robotUncertaintyMm();
    }

    /** The held peak of the tool point, mm/s; null when not known. */
    public @Nullable Double toolPeakMmS() {
        return speedsComplete ? Double.valueOf(knownToolPeakMmS) : null;
    }

    /** The peak of the tool point in full power, mm/s; null when not known. */
    public @Nullable Double fullPowerPeakMmS() {
        return speedsComplete ? Double.valueOf(knownFullPowerPeakMmS) : null;
    }

    /** The held peak of the fastest part, mm/s; null when not known. */
    public @Nullable Double fastestMmS() {
        return speedsComplete ? Double.valueOf(knownFastestMmS) : null;
    }

    /** The largest horizontal distance of the tool point, mm; null when not known. */
    public @Nullable Double radiusMm() {
        return waysComplete ? Double.valueOf(knownRadiusMm) : null;
    }

    /** The separation distance, mm; null when not known. */
    public @Nullable Double separationMm() {
        return speedsComplete ? knownSeparationMm : null;
    }

    /**
     * How far arm, tool or part get from axis 1 on the ways that are known, horizontally, mm: the tool point with the
     * overhang around it, or the arm's own links.
     */
    public double farthestMm(CellDescription cell) {
        return Math.max(
                knownRadiusMm + cell.fittedTool().overhangMm(),
                Math.max(cell.arm().ownRadius(), knownOwnRadiusMm));
    }

    /**
     * How far the fastest part goes until the arm stands when somebody presses the e-stop after so many seconds, mm;
     * null when not known.
     */
    public @Nullable Double stopTravelMm(double personS) {
        return speedsComplete
                ? Double.valueOf(
                        knownFastestMmS * (personS + arm.reactionS()) + knownFastestMmS * arm.stoppingS() * HALF)
                : null;
    }
}
