package org.standclear.core.program.blocks;

import static org.standclear.core.quantity.ShownNumber.plain;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import org.jspecify.annotations.Nullable;
import org.standclear.core.arm.ToolPose;
import org.standclear.core.geometry.Vector;
import org.standclear.core.program.MotionPlan;
import org.standclear.core.program.Point;
import org.standclear.core.program.Step;
import org.standclear.core.quantity.Tolerance;
import org.standclear.core.text.BadInputException;
import org.standclear.core.text.NumberRule;

/** Follows the blocks of a program one by one, keeping what stays in force from one to the next. */
final class BlockProgram {

    /** A bound on what one file can make the program hold. */
    private static final int MOST = 100_000;

    private static final double SECONDS_PER_MINUTE = 60;
    private static final double MS_PER_SECOND = 1000;

    private final BlockPoints points;
    private final List<Step> steps = new ArrayList<>();
    private final Map<Character, MotionPlan.Note> dwells = new TreeMap<>();
    private @Nullable ToolPose at;
    private BlockModes modes = BlockModes.INITIAL;
    private @Nullable Double feedMmS;

    BlockProgram(BlockPoints points, @Nullable ToolPose start) {
        this.points = points;
        this.at = start;
    }

    List<Step> steps() {
        return steps;
    }

    /** How dwells were taken. */
    List<MotionPlan.Note> notes() {
        return List.copyOf(dwells.values());
    }

    /** Does what a block says; false, with nothing done, when it is not understood. */
    boolean take(Block block, int line) {
        BlockModes next = modes.after(block);
        if (next == null) {
            return false;
        }
        if (block.g().contains(BlockModes.DWELL)) {
            return dwell(block, line);
        }
        boolean moves = block.hasAnyOf("XYZCIJR");
        if (block.has('P') || moves && !fits(block, next)) {
            return false;
        }
        Double feed = next.inches() == modes.inches() ? feedMmS : null;
        if (block.has('F')) {
            feed = feed(value(block, 'F'), next, line);
        }
        if (moves && !move(block, next, feed, line)) {
            return false;
        }
        modes = next;
        feedMmS = feed;
        return true;
    }

    private static boolean fits(Block block, BlockModes next) {
        boolean arc = next.motion() == 2 || next.motion() == 3;
        boolean offsets = block.hasAnyOf("IJ");
        return next.motion() >= 0 && (arc || !block.hasAnyOf("IJR")) && !(offsets && block.has('R'));
    }

    private static double value(Block block, char letter) {
        Double value = block.get(letter);
        return value == null ? 0 : value;
    }

    private static double feed(double f, BlockModes next, int line) {
        if (!NumberRule.ABOVE_ZERO.accepts(f)) {
            throw new BadInputException(line, "F is " + plain(f) + "; write " + NumberRule.ABOVE_ZERO.words());
        }
        return f * next.scale() / SECONDS_PER_MINUTE;
    }

    private boolean dwell(Block block, int line) {
        boolean isBare = block.g().size() == 1 && block.m().isEmpty() && !block.hasAnyOf("YZCFIJR");
        if (!isBare || block.has('P') == block.has('X')) {
            return false;
        }
        char letter = block.has('P') ? 'P' : 'X';
        double seconds = letter == 'P' ? value(block, 'P') / MS_PER_SECOND : value(block, 'X');
        if (!NumberRule.NOT_BELOW_ZERO.accepts(seconds)) {
            throw new BadInputException(line, "the dwell is below 0; write a time from 0");
        }
        String unit = letter == 'P' ? "P as milliseconds" : "X as seconds";
        dwells.putIfAbsent(
                letter,
                new MotionPlan.Note(
                        line,
                        "G4 with " + unit + ", first here: " + plain(seconds) + " s. Robots differ;"
                                + " make sure that yours takes it so."));
        add(new Step.Wait(steps.size() + 1, line, seconds), line);
        return true;
    }

    private void add(Step step, int line) {
        if (steps.size() == MOST) {
            throw new BadInputException(line, "the file has more than " + MOST + " steps; split it up");
        }
        steps.add(step);
    }

    private boolean move(Block block, BlockModes next, @Nullable Double feed, int line) {
        ToolPose from = at;
        ToolPose to = target(block, next, line);
        // the same axis would have to turn by more than half a turn: whether it does, or goes the shorter way, robots
        // do not agree on
        if (from != null && turnsTooFar(to.yaw() - from.yaw())) {
            return false;
        }
        if (next.motion() > 0 && feed == null) {
            throw new BadInputException(
                    line, "no F says how fast this move is; write F here or before, and anew after G20 or G21");
        }
        Step.@Nullable Round round = next.motion() < 2 ? null : round(block, next, from, to, line);
        Point end = points.end(block.get('N'), line, to);
        at = to;
        add(step(steps.size() + 1, line, end, round, next.motion() == 0 ? null : feed), line);
        return true;
    }

    private static boolean turnsTooFar(double turn) {
        return turn > 180 + Tolerance.LENGTH || turn <= -180 + Tolerance.LENGTH;
    }

    /** A paced step where there is a speed, else a joint move; an arc where there is a centre. */
    private static Step step(int number, int line, Point end, Step.@Nullable Round round, @Nullable Double speed) {
        if (speed == null) {
            return new Step.Joint(number, line, end, 100, 100);
        }
        return round == null
                ? new Step.Straight(number, line, end, speed, 100)
                : new Step.Arc(number, line, end, round, speed, 100);
    }

    private ToolPose target(Block block, BlockModes next, int line) {
        ToolPose from = at;
        if (from == null && (next.incremental() || !(block.has('X') && block.has('Y') && block.has('Z')))) {
            throw new BadInputException(
                    line,
                    "nothing says where the arm stands before this move; write X, Y and Z in it with G90, or declare a"
                            + " start and name it in a comment such as (point park X0 Y0 Z100 C0)");
        }
        Vector place = from == null ? new Vector(0, 0, 0) : from.place();
        Vector there = new Vector(
                axis(block, 'X', place.x(), next, line),
                axis(block, 'Y', place.y(), next, line),
                axis(block, 'Z', place.z(), next, line));
        double yaw = from == null ? 0 : from.yaw();
        double c = value(block, 'C');
        BlockPosture posture = points.posture(line);
        return new ToolPose(
                there,
                !block.has('C') ? yaw : next.incremental() ? inRange(yaw + c, 'C', line) : c,
                posture.pitch(),
                posture.roll());
    }

    private static double axis(Block block, char letter, double before, BlockModes next, int line) {
        if (!block.has(letter)) {
            return before;
        }
        double value = value(block, letter) * next.scale();
        return inRange(next.incremental() ? before + value : value, letter, line);
    }

    private static double inRange(double value, char letter, int line) {
        if (!NumberRule.ANY.accepts(value)) {
            throw new BadInputException(line, letter + " leads beyond 1000000; write " + NumberRule.ANY.words());
        }
        return value;
    }

    private static Step.Round round(Block block, BlockModes next, @Nullable ToolPose from, ToolPose to, int line) {
        if (from == null) {
            throw new BadInputException(
                    line, "nothing says where this arc begins; come to its beginning with G0 or G1 first");
        }
        if (from.pitch() != to.pitch() || from.roll() != to.roll()) {
            throw new BadInputException(
                    line,
                    "the arc would change pitch or roll on its way; come to its beginning with the pitch and roll of its"
                            + " end first");
        }
        ArcCentre centre = new ArcCentre(from.place(), to.place(), next.motion() == 2, line);
        if (block.has('R')) {
            return centre.byRadius(value(block, 'R') * next.scale());
        }
        if (!block.hasAnyOf("IJ")) {
            throw new BadInputException(line, "the arc has neither I and J nor R; write where its centre is");
        }
        return centre.byOffsets(value(block, 'I') * next.scale(), value(block, 'J') * next.scale());
    }
}
