package org.standclear.core.program.phrases;

import java.util.ArrayList;
import java.util.List;
import java.util.Objects;
import org.jspecify.annotations.Nullable;
import org.standclear.core.program.DeclarationField;
import org.standclear.core.program.Found;
import org.standclear.core.program.Step;
import org.standclear.core.program.phrases.SpokenProgram.Item;
import org.standclear.core.text.BadInputException;

/** Goes through a program line by line as the robot would, and writes down the steps. */
final class SpokenRun {

    /** How deep loops stand in each other, and sections call each other. */
    static final int DEEPEST = 16;

    private static final int MOST = 100_000;

    /** So many steps more than lines can come of loops and calls: a few lines must not keep a server busy. */
    private static final int MOST_REPEATED = 20_000;

    private static final int MOST_LINES = 1_000_000;
    private static final int MOST_FOUND = 1000;

    private final SpokenProgram program;
    private final SpokenPoints points;
    private final List<Step> steps = new ArrayList<>();
    private final List<Found> found = new ArrayList<>();
    private SpokenState state = SpokenState.INITIAL;
    private final int mostSteps;
    private int lines;
    private int depth;

    SpokenRun(SpokenProgram program, SpokenPoints points, int linesOfFile) {
        this.program = program;
        this.points = points;
        this.mostSteps = Math.min(MOST, linesOfFile + MOST_REPEATED);
    }

    List<Step> steps() {
        return steps;
    }

    List<Found> found() {
        return found;
    }

    /** Goes through the whole program. */
    void all() {
        for (Item item : program.main()) {
            if (item instanceof SpokenProgram.Loop loop && isWhole(loop)) {
                whole(loop);
            } else {
                item(item);
            }
        }
    }

    /** Whether nothing but this loop does anything. */
    private boolean isWhole(SpokenProgram.Loop loop) {
        return program.main().stream().noneMatch(item -> item != loop && acts(item));
    }

    private static boolean acts(Item item) {
        if (!(item instanceof SpokenProgram.Line one)) {
            return true;
        }
        MatchedLine line = one.line();
        return line.means(Meaning.JOINT_MOVE)
                || line.means(Meaning.STRAIGHT_MOVE)
                || line.means(Meaning.WAIT)
                || line.means(Meaning.CALL)
                || line.means(Meaning.NO_MOTION) && line.has(Part.ACTION);
    }

    /** A loop round the whole program is its loop, if every pass is like the first. */
    private void whole(SpokenProgram.Loop loop) {
        int first = steps.size();
        org.standclear.core.program.Loop passes = passes(loop);
        body(loop);
        List<Step> once = List.copyOf(steps.subList(first, steps.size()));
        int foundOnce = found.size();
        SpokenState after = state;
        body(loop);
        List<Step> again = List.copyOf(steps.subList(first + once.size(), steps.size()));
        steps.subList(first + once.size(), steps.size()).clear();
        found.subList(foundOnce, found.size()).clear();
        state = after;
        if (alike(once, again)) {
            find(DeclarationField.LOOP, passes, loop.begin().number());
        } else if (passes.forever()) {
            program.notUnderstood().add(loop.begin().number());
        } else {
            for (int i = 1; i < passes.passes(); i++) {
                body(loop);
            }
        }
    }

    private static boolean alike(List<Step> once, List<Step> again) {
        if (once.size() != again.size()) {
            return false;
        }
        for (int i = 0; i < once.size(); i++) {
            if (!Objects.equals(numbered(once.get(i)), numbered(again.get(i)))) {
                return false;
            }
        }
        return true;
    }

    /** The step without its number. */
    private static Step numbered(Step step) {
        if (step instanceof Step.Joint joint) {
            return new Step.Joint(0, joint.line(), joint.target(), joint.speedPercent(), joint.accelerationPercent());
        }
        if (step instanceof Step.Straight line) {
            return new Step.Straight(0, line.line(), line.target(), line.speedMmS(), line.accelerationPercent());
        }
        return step instanceof Step.Wait wait
                ? new Step.Wait(0, wait.line(), wait.seconds())
                : new Step.Action(0, step.line(), ((Step.Action) step).name());
    }

    private static org.standclear.core.program.Loop passes(SpokenProgram.Loop loop) {
        String count = loop.begin().checked(Part.COUNT);
        return Objects.requireNonNull(PartValue.loop(count));
    }

    private void body(SpokenProgram.Loop loop) {
        pay(loop.begin());
        loop.body().forEach(this::item);
    }

    private void pay(MatchedLine line) {
        if (++lines > MOST_LINES) {
            throw new BadInputException(
                    line.number(),
                    "the program goes through more than " + MOST_LINES + " lines; let its loops be shorter");
        }
    }

    private void item(Item item) {
        if (item instanceof SpokenProgram.Loop loop) {
            org.standclear.core.program.Loop passes = passes(loop);
            if (passes.forever()) {
                // what comes after it, or what came before, is no part of its passes
                program.notUnderstood().add(loop.begin().number());
            }
            for (int i = 0; i < passes.passes(); i++) {
                body(loop);
            }
        } else {
            MatchedLine line = ((SpokenProgram.Line) item).line();
            pay(line);
            line(line, Objects.requireNonNull(line.phrase()).meaning());
        }
    }

    private void line(MatchedLine line, Meaning meaning) {
        switch (meaning) {
            case POWER ->
                find(
                        DeclarationField.POWER,
                        Objects.requireNonNull(PartValue.POWERS.get(line.checked(Part.POWER))),
                        line.number());
            case OVERRIDE -> find(DeclarationField.OVERRIDE, line.number(Part.PERCENT), line.number());
            case AXIS_SPEED -> state = state.withAxisPercent(line.number(Part.PERCENT));
            case STRAIGHT_SPEED -> state = state.withStraight(line.number(Part.SPEED));
            case ACCELERATION -> state = state.withAcceleration(line.number(Part.PERCENT));
            case JOINT_MOVE -> add(joint(line), line);
            case STRAIGHT_MOVE -> add(straight(line), line);
            case WAIT -> add(new Step.Wait(next(), line.number(), line.number(Part.TIME)), line);
            case CALL -> call(line);
            case NO_MOTION -> {
                if (line.has(Part.ACTION)) {
                    add(new Step.Action(next(), line.number(), line.text(Part.ACTION)), line);
                }
            }
            default -> {}
        }
    }

    private int next() {
        return steps.size() + 1;
    }

    private Step joint(MatchedLine line) {
        double speed = line.has(Part.PERCENT) ? line.number(Part.PERCENT) : state.axisPercent();
        return new Step.Joint(next(), line.number(), points.target(line), speed, acceleration(line));
    }

    private double acceleration(MatchedLine line) {
        return line.has(Part.ACCELERATION) ? line.number(Part.ACCELERATION) : state.accelerationPercent();
    }

    private Step straight(MatchedLine line) {
        @Nullable Double speed = line.has(Part.SPEED) ? Double.valueOf(line.number(Part.SPEED)) : state.straightMmS();
        if (speed == null) {
            throw new BadInputException(
                    line.number(), "nothing says how fast this straight move is; say a speed in it or before it");
        }
        return new Step.Straight(next(), line.number(), points.target(line), speed, acceleration(line));
    }

    private void add(Step step, MatchedLine line) {
        if (steps.size() >= mostSteps) {
            throw new BadInputException(
                    line.number(), "the program has more than " + mostSteps + " steps; let its loops be shorter");
        }
        steps.add(step);
    }

    private void call(MatchedLine line) {
        if (depth == DEEPEST) {
            throw new BadInputException(
                    line.number(), "sections call each other more than " + DEEPEST + " deep, or one calls itself");
        }
        depth++;
        program.section(line.text(Part.SECTION)).forEach(this::item);
        depth--;
    }

    /** What the file says twice it says once. */
    private void find(DeclarationField field, Object value, int line) {
        for (int i = found.size() - 1; i >= 0; i--) {
            if (found.get(i).field() == field) {
                if (found.get(i).value().equals(value)) {
                    return;
                }
                break;
            }
        }
        if (found.size() == MOST_FOUND) {
            throw new BadInputException(line, "power and override change more than " + MOST_FOUND + " times");
        }
        found.add(new Found(field, value, line, next()));
    }
}
