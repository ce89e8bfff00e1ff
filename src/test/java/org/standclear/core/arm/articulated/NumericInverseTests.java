package org.standclear.core.arm.articulated;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Random;
import java.util.concurrent.TimeUnit;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.Timeout;
import org.standclear.core.arm.AxisValues;
import org.standclear.core.arm.Posture;
import org.standclear.core.arm.Solution;
import org.standclear.core.arm.ToolPose;
import org.standclear.core.geometry.Vector;

/** The numeric inverse against solutions that are known because their poses were made from them. */
@Timeout(value = 1, unit = TimeUnit.HOURS)
class NumericInverseTests {

    private static final long SEED = 20261202L;
    private static final int POSES = Integer.getInteger("inverse.poses", 2000);
    private static final int POSES_OF_AN_ARM = 20;
    private static final int OUT_OF_REACH = 40;
    private static final Vector OFFSET = new Vector(30, -20, 110);

    private final Random random = new Random(SEED);

    private double between(double low, double high) {
        return low + (high - low) * random.nextDouble();
    }

    private double quarter() {
        return random.nextBoolean() ? 90 : -90;
    }

    /** Six axes whose wrist axes miss each other by some centimetres, as those of many real arms do. */
    private ArticulatedArm arm() {
        return SixAxes.of(
                between(-20, 150),
                quarter(),
                between(0, 400),
                between(200, 450),
                random.nextBoolean() ? 0 : 180,
                between(-60, 60),
                between(-60, 110),
                quarter(),
                between(-150, 150),
                between(-40, 40),
                quarter(),
                between(200, 450),
                0,
                quarter(),
                between(20, 90),
                between(0, 30),
                between(-50, 50),
                between(0, 120));
    }

    private AxisValues anywhere() {
        return AxisValues.of(random.doubles(6, -180, 180).toArray());
    }

    @Test
    void missesNoSolutionThatIsKnown() {
        List<String> missed = new ArrayList<>();
        double worst = 0;
        long[] nanos = new long[POSES];
        ArticulatedArm arm = arm();
        for (int i = 0; i < POSES; i++) {
            arm = i % POSES_OF_AN_ARM == 0 ? arm() : arm;
            assertThat(arm.hasClosedForm()).isFalse();
            AxisValues known = anywhere();
            ToolPose pose = arm.toolPose(known, OFFSET);
            long begin = System.nanoTime();
            Solution solution = arm.solve(pose, arm.posture(known), OFFSET, null);
            nanos[i] = System.nanoTime() - begin;
            if (solution instanceof Solution.Found found) {
                worst = Math.max(worst, apart(arm, found.axes(), pose));
            } else {
                missed.add(i + " " + known);
            }
        }
        Arrays.sort(nanos);
        System.out.printf(
                "NumericInverseTests: seed %d, %d poses, missed %d, farthest off %.1e mm or deg, median %.0f us, 99 %% %.0f us, longest %.0f us%n",
                SEED,
                POSES,
                missed.size(),
                worst,
                nanos[POSES / 2] / 1e3,
                nanos[POSES * 99 / 100] / 1e3,
                nanos[POSES - 1] / 1e3);
        assertThat(missed).isEmpty();
        assertThat(worst).isLessThanOrEqualTo(2 * Newton.ERROR_MM);
    }

    /** What is out of reach takes the longest: every guess is tried. */
    @Test
    void givesUpWhatIsOutOfReach() {
        int unsolved = 0;
        long begin = System.nanoTime();
        for (int i = 0; i < OUT_OF_REACH; i++) {
            ArticulatedArm arm = arm();
            double links = arm.rows().stream().mapToDouble(DhRow::length).sum();
            ToolPose like = arm.toolPose(anywhere(), OFFSET);
            Vector flange = new Vector(0, 0.8 * links, -0.5 * links);
            ToolPose pose = ToolPose.of(flange.plus(like.rotation().times(OFFSET)), like.rotation());
            unsolved += arm.solve(pose, Posture.ALL.get(i % 8), OFFSET, null) instanceof Solution.Unsolved ? 1 : 0;
        }
        double ms = (System.nanoTime() - begin) / 1e6 / OUT_OF_REACH;
        System.out.printf("NumericInverseTests: out of reach %d of %d, %.1f ms each%n", unsolved, OUT_OF_REACH, ms);
        assertThat(unsolved).isEqualTo(OUT_OF_REACH);
    }

    /** How far the tool is from where it should be: mm or deg, whichever is more. */
    private static double apart(ArticulatedArm arm, AxisValues axes, ToolPose wanted) {
        ToolPose found = arm.toolPose(axes, OFFSET);
        double mm = found.place().minus(wanted.place()).length();
        double rad = found.rotation().times(wanted.rotation().inverse()).turn().length();
        return Math.max(mm, Math.toDegrees(rad));
    }
}
