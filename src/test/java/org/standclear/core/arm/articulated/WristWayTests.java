package org.standclear.core.arm.articulated;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.List;
import java.util.OptionalDouble;
import java.util.Random;
import java.util.function.DoubleUnaryOperator;
import org.junit.jupiter.api.Test;
import org.standclear.core.arm.AxisValues;
import org.standclear.core.arm.Posture;
import org.standclear.core.arm.ToolLine;
import org.standclear.core.arm.ToolPose;
import org.standclear.core.geometry.Rotation;
import org.standclear.core.geometry.Search;
import org.standclear.core.geometry.Vector;

/** Lines that graze the border of the wrist's reach, against dense sampling that is refined to its lowest place. */
class WristWayTests {

    private static final long SEED = 20261203L;
    private static final int LINES = Integer.getInteger("reach.lines", 800);
    private static final int SAMPLES = 2000;
    private static final Vector OFFSET = new Vector(30, -20, 110);

    /** Nearer to the border than this, mm, either answer is right. */
    private static final double CLOSE = 2e-6;

    private final Random random = new Random(SEED);
    private int leaving;
    private int grazing;

    private double between(double low, double high) {
        return low + (high - low) * random.nextDouble();
    }

    private ArticulatedArm arm() {
        double shoulderOut = random.nextInt(3) == 0 ? 0 : between(-40, 150);
        double aside = random.nextInt(3) == 0 ? 0 : between(-150, 150);
        return SixAxes.of(
                shoulderOut,
                -90,
                between(0, 400),
                between(200, 450),
                0,
                0,
                between(-60, 110),
                -90,
                aside,
                0,
                90,
                between(200, 450),
                0,
                -90,
                0,
                0,
                0,
                between(0, 120));
    }

    @Test
    void leavesTheReachWhereDenseSamplingDoes() {
        for (int i = 0; i < LINES; i++) {
            ArticulatedArm arm = arm();
            AxisValues middle = nearTheBorder(arm);
            ToolPose at = arm.toolPose(middle, OFFSET);
            compare("line " + i, arm, line(at), arm.posture(middle));
        }
        System.out.printf("WristWayTests: seed %d, lines %d, leaving %d, grazing %d%n", SEED, LINES, leaving, grazing);
        assertThat(leaving).isBetween(LINES / 10, LINES * 9 / 10);
        assertThat(grazing).isGreaterThan(LINES / 40);
    }

    /** The elbow next to straight or anywhere: the wrist is then next to the farthest, or where it happens to be. */
    private AxisValues nearTheBorder(ArticulatedArm arm) {
        double straight = -Math.toDegrees(Stance.forearmLead(arm.rows()));
        double elbow = random.nextBoolean() ? between(-180, 180) : straight + 20 * Math.pow(random.nextDouble(), 6);
        return AxisValues.of(
                between(-180, 180),
                between(-180, 180),
                elbow,
                between(-180, 180),
                between(-120, 120),
                between(-180, 180));
    }

    /** Through a pose, mostly across, turning or not. */
    private ToolLine line(ToolPose at) {
        Vector way =
                unit(at.place().cross(new Vector(random.nextGaussian(), random.nextGaussian(), random.nextGaussian())));
        Vector along = way.times(Math.exp(between(0, 5.5)));
        Vector about = unit(new Vector(random.nextGaussian(), random.nextGaussian(), random.nextGaussian()));
        double turn = random.nextBoolean() ? 0 : between(-150, 150);
        double part = random.nextDouble();
        Rotation begin = Rotation.about(about, -turn * part).times(at.rotation());
        Vector from = at.place().minus(along.times(part));
        return new ToolLine(ToolPose.of(from, begin), from.plus(along), turn, about);
    }

    private static Vector unit(Vector vector) {
        return vector.times(1 / vector.length());
    }

    private void compare(String name, ArticulatedArm arm, ToolLine line, Posture posture) {
        ClosedForm form = new ClosedForm(arm.rows());
        FlangeLine flange = new FlangeLine(line, OFFSET);
        double lever = flange.lever() + arm.rows().get(5).length();
        OptionalDouble found = new WristWay(form, flange, posture, lever).leaves();
        DoubleUnaryOperator margin = mm -> {
            Rotation turned = flange.turned(mm);
            return form.reach(form.wrist(flange.flange(mm, turned), turned), posture)
                    .margin();
        };
        double least = least(margin, line.length());
        grazing += Math.abs(least) < 0.1 ? 1 : 0;
        if (least < -CLOSE) {
            leaving++;
            assertThat(found).as(name + " by " + least).isPresent();
            double there = margin.applyAsDouble(found.getAsDouble());
            assertThat(there).as(name).isLessThan(0);
            double before = found.getAsDouble() - 1e-5;
            assertThat(before < 0 ? 0 : least(margin, before))
                    .as(name + " has left before")
                    .isGreaterThan(-CLOSE);
        } else if (least > 0) {
            assertThat(found).as(name + " keeps " + least).isEmpty();
        }
    }

    private static double least(DoubleUnaryOperator margin, double length) {
        double[] values = new double[SAMPLES + 1];
        double least = Double.POSITIVE_INFINITY;
        for (int i = 0; i <= SAMPLES; i++) {
            values[i] = margin.applyAsDouble(length * i / SAMPLES);
            least = Math.min(least, values[i]);
        }
        for (int i = 0; i <= SAMPLES; i++) {
            double before = values[Math.max(0, i - 1)];
            double after = values[Math.min(SAMPLES, i + 1)];
            if (values[i] <= before && values[i] <= after && values[i] < least + 1) {
                double from = length * Math.max(0, i - 1) / SAMPLES;
                double to = length * Math.min(SAMPLES, i + 1) / SAMPLES;
                double there = Search.greatest(mm -> -margin.applyAsDouble(mm), from, to, 50);
                least = Math.min(least, margin.applyAsDouble(there));
            }
        }
        return least;
    }

    /** Along the border itself, all the way: what is proven of it in parts must not take for ever. */
    @Test
    void isSoonDoneAlongTheBorder() {
        ArticulatedArm arm = SixAxes.of(0, -90, 0, 400, 0, 0, 0, -90, 0, 0, 90, 300, 0, -90, 0, 0, 0, 0);
        double border = 700;
        for (double inside : List.of(0.0, 1e-7, 1e-6, 1e-5, 1e-3)) {
            Vector up = new Vector(0, 0, border - inside);
            ToolPose from = new ToolPose(up, 0);
            ToolLine line = new ToolLine(from, up.plus(new Vector(1e-3, 0, 0)), 170);
            FlangeLine flange = new FlangeLine(line, new Vector(0, 0, 0));
            WristWay way = new WristWay(new ClosedForm(arm.rows()), flange, Posture.ALL.get(0), 0);
            assertThat(way.leaves()).as("%s mm inside", inside).isEmpty();
            assertThat(way.looks()).isLessThan(5_000);
        }
    }
}
