package org.standclear.core.motion;

import java.util.ArrayList;
import java.util.List;
import java.util.OptionalDouble;
import org.jspecify.annotations.Nullable;
import org.standclear.core.arm.Arm;
import org.standclear.core.arm.AxisValues;
import org.standclear.core.arm.Branch;
import org.standclear.core.arm.GantryArm;
import org.standclear.core.arm.LineFollowing;
import org.standclear.core.arm.RangeFault;
import org.standclear.core.arm.Solution;
import org.standclear.core.arm.ToolArc;
import org.standclear.core.arm.ToolWay;
import org.standclear.core.cell.CellDescription;
import org.standclear.core.cell.Power;
import org.standclear.core.geometry.Vector;
import org.standclear.core.program.Declared;
import org.standclear.core.program.Point;
import org.standclear.core.program.Step;

/** Goes through a program step by step, keeping where the arm stands. */
final class MotionComputer {

    /** A straight move or an arc shorter than this only turns the tool, mm. */
    private static final double SHORTEST_WAY = 1e-6;

    /** After so many points that were looked for in vain no more are looked for: each takes a tenth of a second. */
    private static final int MOST_VAIN = 8;

    private final CellDescription cell;
    private final Arm arm;
    private final Vector offset;
    private final boolean isReduced;
    private final Overrides overrides;

    private final List<StepMotion> steps = new ArrayList<>();
    private final List<MotionFault> faults = new ArrayList<>();
    private final List<AxisUse> uses = new ArrayList<>();
    private @Nullable Station station;
    private int vain;

    /** Where the arm stands; the axes are null when they are not known. */
    record Station(Point point, @Nullable AxisValues axes) {}

    MotionComputer(CellDescription cell, Declared declared) {
        this.cell = cell;
        this.arm = cell.arm();
        this.offset = cell.fittedTool().offset();
        this.isReduced = declared.values().power() == Power.REDUCED;
        this.overrides = new Overrides(declared);
    }

    List<StepMotion> steps() {
        return steps;
    }

    List<MotionFault> faults() {
        return faults;
    }

    List<AxisUse> uses() {
        return uses;
    }

    @Nullable
    Station station() {
        return station;
    }

    void startAt(Point start, int line) {
        station = new Station(start, reached(start, null, 0, line));
    }

    /** The axis values at a point; null, with the fault noted, when there are none. */
    private @Nullable AxisValues reached(Point point, @Nullable AxisValues before, int step, int line) {
        AxisValues given = point.axes();
        if (given == null && vain >= MOST_VAIN && arm.searches()) {
            String why = "was not looked for: " + MOST_VAIN + " points before it were not reached; mend those first";
            faults.add(new MotionFault.Unsolved(step, line, point.name(), why));
            return null;
        }
        Solution solution = given == null
                ? arm.solve(point.pose(), point.branch(), offset, before)
                : new Solution.Found(given, GantryArm.faults(arm.axes(), given));
        if (solution instanceof Solution.Unsolved unsolved) {
            vain++;
            faults.add(new MotionFault.Unsolved(step, line, point.name(), unsolved.why()));
            return null;
        }
        if (solution instanceof Solution.OutOfReach out) {
            faults.add(
                    new MotionFault.OutOfReach(step, line, point.name(), out.radius(), out.nearest(), out.farthest()));
            return null;
        }
        Solution.Found found = (Solution.Found) solution;
        for (RangeFault fault : found.faults()) {
            faults.add(new MotionFault.OutOfRange(step, line, point.name(), fault.axis(), fault.value(), false));
        }
        return found.axes();
    }

    void take(Step step) {
        if (step instanceof Step.Moving moving) {
            move(moving, false, overrides.at(moving.number()));
        } else if (step instanceof Step.Wait wait) {
            steps.add(standing(wait, StepKind.WAIT, wait.seconds()));
        } else {
            steps.add(standing(step, StepKind.DO, 0));
        }
    }

    private static StepMotion standing(Step step, StepKind kind, double seconds) {
        return new StepMotion(
                step.number(), kind, step.line(), false, false, seconds, seconds, Peaks.STILL, null, null);
    }

    /** The move of a loop from where the arm stands back to its first step's target. */
    void close(Step.Moving first, int lastStep) {
        move(first, true, Math.max(overrides.at(first.number()), overrides.at(lastStep)));
    }

    private void move(Step.Moving step, boolean closing, double override) {
        Station from = station;
        if (from == null) {
            AxisValues axes = reached(step.target(), null, step.number(), step.line());
            station = new Station(step.target(), axes);
            steps.add(new StepMotion(
                    step.number(), kind(step), step.line(), false, true, 0.0, 0.0, null, step.target(), null));
            return;
        }
        ToolWay way = ToolWays.of(step, from.point().pose());
        boolean isPaced = step instanceof Step.Paced && way.length() >= SHORTEST_WAY;
        MoveConditions conditions = conditions(override);
        MoveMotion motion = isPaced ? paced((Step.Paced) step, from, way, conditions) : joint(step, from, conditions);
        steps.add(new StepMotion(
                step.number(),
                isPaced ? kind(step) : StepKind.JOINT,
                step.line(),
                closing,
                false,
                motion.durationS(),
                motion.fullPowerDurationS(),
                motion.peaks(),
                step.target(),
                motion.trace()));
    }

    private static StepKind kind(Step.Moving step) {
        if (step instanceof Step.Arc) {
            return StepKind.ARC;
        }
        return step instanceof Step.Straight ? StepKind.STRAIGHT : StepKind.JOINT;
    }

    private MoveConditions conditions(double override) {
        Double ceiling = cell.armFacts().reducedPowerSpeedMmS();
        double held = isReduced && ceiling != null ? ceiling * override : Double.POSITIVE_INFINITY;
        return new MoveConditions(override, held, cell.fittedTool().overhangMm());
    }

    private MoveMotion joint(Step.Moving step, Station from, MoveConditions conditions) {
        AxisValues to = reached(step.target(), from.axes(), step.number(), step.line());
        station = new Station(step.target(), to);
        if (to == null || from.axes() == null) {
            return MoveMotion.UNKNOWN;
        }
        JointPath path = new JointPath(arm, offset, from.axes(), to.minus(from.axes()));
        double speedPercent = step instanceof Step.Joint joint ? joint.speedPercent() : 100;
        return new JointMotion(path, conditions).at(speedPercent, step.accelerationPercent());
    }

    private MoveMotion paced(Step.Paced step, Station from, ToolWay way, MoveConditions conditions) {
        int already = faults.size();
        AxisValues to = reached(step.target(), from.axes(), step.number(), step.line());
        station = new Station(step.target(), to);
        Branch side = side(from.point(), step.target());
        if (to != null && arm.hasElbow() && side == null) {
            faults.add(otherSide(step, from.point()));
        }
        if (way instanceof ToolArc arc && !ToolWays.isRound(arc)) {
            faults.add(new MotionFault.NotRound(
                    step.number(), step.line(), step.target().name(), arc.mismatch()));
            return MoveMotion.UNKNOWN;
        }
        if (to == null || from.axes() == null || arm.hasElbow() && side == null) {
            return MoveMotion.along(new LinePath(way));
        }
        LineFollowing following = arm.follow(way, from.axes(), side, offset);
        OptionalDouble leaves = following.leavesReach();
        if (leaves.isPresent()) {
            Vector where = way.at(leaves.getAsDouble()).place();
            faults.add(new MotionFault.LeavesReach(
                    step.number(), step.line(), step.target().name(), where));
            return MoveMotion.along(new LinePath(way));
        }
        AxisTrack track = new AxisTrack(arm, following, way, from.axes());
        station = new Station(step.target(), track.end());
        if (faults.size() == already) {
            track.faults().forEach(fault -> faults.add(onTheWay(step, fault)));
        }
        double speed = Math.min(
                step.speedMmS() * conditions.override(), cell.armFacts().straightSpeedMmS());
        double acceleration = cell.armFacts().straightAccelerationMmS2() * step.accelerationPercent() / 100;
        StraightMotion motion = new StraightMotion(arm, way, conditions, speed, acceleration);
        motion.uses(track, (axis, used) -> uses.add(new AxisUse(step.number(), step.line(), axis, used)));
        return motion.motion(track);
    }

    /** The branch on which a line runs; null when its ends lie on different ones. */
    private @Nullable Branch side(Point from, Point to) {
        return arm.shared(new Arm.Reached(from.pose(), from.branch()), new Arm.Reached(to.pose(), to.branch()), offset);
    }

    private MotionFault otherSide(Step.Paced step, Point from) {
        Branch before = from.branch();
        Branch named = step.target().branch();
        if (before == null || named == null) {
            throw new IllegalStateException("points of an arm with an elbow name its side");
        }
        return new MotionFault.OtherSide(
                step.number(), step.line(), step.target().name(), before, named);
    }

    private static MotionFault onTheWay(Step.Paced step, RangeFault fault) {
        return new MotionFault.OutOfRange(
                step.number(), step.line(), step.target().name(), fault.axis(), fault.value(), true);
    }
}
