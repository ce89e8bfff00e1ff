package org.standclear.core.motion;

import java.util.List;
import java.util.Optional;
import java.util.function.Function;
import java.util.function.ToDoubleFunction;
import org.jspecify.annotations.Nullable;
import org.standclear.core.arm.AxisValues;
import org.standclear.core.cell.CellDescription;
import org.standclear.core.program.Declared;
import org.standclear.core.program.Loop;
import org.standclear.core.program.MotionPlan;
import org.standclear.core.program.Point;
import org.standclear.core.program.Step;
import org.standclear.core.quantity.Tolerance;

/**
 * How a whole program moves the arm of a cell.
 *
 * @param start where the arm stands before the first step; null when not known
 * @param steps one entry a step in order, and for a loop the closing move last
 * @param windsUp whether the closing move of a loop ends on another turn than the first step did
 */
public record ProgramMotion(
        @Nullable Point start,
        List<StepMotion> steps,
        List<MotionFault> faults,
        List<AxisUse> axisUses,
        boolean windsUp) {

    /** Axis values farther apart than this are different turns, deg. */
    private static final double ANOTHER_TURN = 1;

    public ProgramMotion {
        steps = List.copyOf(steps);
        faults = List.copyOf(faults);
        axisUses = List.copyOf(axisUses);
    }

    /** Computes the motion; the fitted tool's offset and overhang count, whatever is declared. */
    public static ProgramMotion of(CellDescription cell, MotionPlan plan, Declared declared, @Nullable Point start) {
        MotionComputer computer = new MotionComputer(cell, declared);
        if (start != null) {
            computer.startAt(start, start.line());
        }
        Step.@Nullable Moving first = null;
        MotionComputer.@Nullable Station afterFirst = null;
        for (Step step : plan.steps()) {
            computer.take(step);
            if (first == null && step instanceof Step.Moving moving) {
                first = moving;
                afterFirst = computer.station();
            }
        }
        boolean windsUp = false;
        Loop loop = declared.values().loop();
        if (first != null && loop != null && loop.repeats()) {
            computer.close(first, plan.steps().size());
            windsUp = areApart(afterFirst, computer.station());
        }
        return new ProgramMotion(start, computer.steps(), computer.faults(), computer.uses(), windsUp);
    }

    private static boolean areApart(MotionComputer.@Nullable Station a, MotionComputer.@Nullable Station b) {
        if (a == null || b == null || a.axes() == null || b.axes() == null) {
            return false;
        }
        AxisValues apart = a.axes().minus(b.axes());
        for (int i = 0; i < apart.count(); i++) {
            if (Math.abs(apart.get(i)) > ANOTHER_TURN) {
                return true;
            }
        }
        return false;
    }

    /** Whether the way of the first move is not known because nothing says where the arm stands. */
    public boolean lacksStart() {
        return steps.stream().anyMatch(StepMotion::fromUnknownStart);
    }

    /** Whether some move's speeds cannot be computed, leaving aside a first move from an unknown start. */
    public boolean hasUnknown() {
        return steps.stream().anyMatch(StepMotion::isUnknown) || hasOnlyAFirstMove();
    }

    /** With nothing but a first move from an unknown start there is no rest on which to answer. */
    private boolean hasOnlyAFirstMove() {
        return lacksStart() && steps.stream().filter(StepMotion::isMove).count() == 1;
    }

    /** The greatest of a speed over all steps of which it is known; 0 when of none. */
    public double greatestKnown(ToDoubleFunction<Peaks> speed) {
        return steps.stream()
                .map(StepMotion::peaks)
                .flatMap(peaks -> Optional.ofNullable(peaks).stream())
                .mapToDouble(speed)
                .max()
                .orElse(0);
    }

    /** The earliest step on which a speed is greatest, but for rounding; empty when none is known. */
    public Optional<StepMotion> stepOfGreatest(ToDoubleFunction<Peaks> speed) {
        double greatest = greatestKnown(speed);
        return steps.stream()
                .filter(StepMotion::isMove)
                .filter(step -> step.peaks() != null && (Tolerance.isSame(speed.applyAsDouble(step.peaks()), greatest)))
                .findFirst();
    }

    /** One pass as the power mode holds it, s; null when a part of it is not known. */
    public @Nullable Double cycleTimeS() {
        return cycle(StepMotion::durationS);
    }

    /** One pass in full power, s; null when a part of it is not known. */
    public @Nullable Double fullPowerCycleTimeS() {
        return cycle(StepMotion::fullPowerDurationS);
    }

    /** Moves and waits of one pass; the closing move of a loop stands in for its first step. */
    private @Nullable Double cycle(Function<StepMotion, @Nullable Double> duration) {
        boolean closes = steps.stream().anyMatch(StepMotion::closing);
        boolean firstMove = true;
        double sum = 0;
        for (StepMotion step : steps) {
            boolean replaced = closes && firstMove && step.isMove();
            firstMove &= !step.isMove();
            Double seconds = duration.apply(step);
            if (!replaced) {
                if (seconds == null) {
                    return null;
                }
                sum += seconds;
            }
        }
        return sum;
    }
}
