package org.standclear.core.motion;

import static java.util.Objects.requireNonNull;
import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.List;
import org.junit.jupiter.api.Test;
import org.standclear.core.arm.Axis;
import org.standclear.core.arm.AxisValues;
import org.standclear.core.arm.ScaraArm;
import org.standclear.core.geometry.Vector;
import org.standclear.core.quantity.Interval;

/**
 * A published example with two links of 1 m (S): from (135, -45 deg) in the direction (-1, -0.820), 0.8 rad/s and 2
 * rad/s2. Legal for the axes, it takes the tip to 2.04 m/s in 1.477 s; a tip limit of 1.0 m/s needs the leading joint
 * at 0.38 rad/s (rounded down) and 2.457 s.
 */
class TwoLinkExampleTests {

    private static final double SPEED = Math.toDegrees(0.8);
    private static final double ACCELERATION = Math.toDegrees(2);

    /** From the published time: (1.477 - 0.8 / 2) * 0.8 rad. */
    private static final double WAY = Math.toDegrees((1.477 - 0.4) * 0.8);

    private static Axis axis(String name, double speed) {
        return new Axis(name, true, new Interval(-360, 360), speed, ACCELERATION);
    }

    private static MoveMotion move(double speed, double ceiling) {
        ScaraArm arm = new ScaraArm(
                1000,
                1000,
                List.of(axis("shoulder", speed), axis("elbow", speed), axis("lift", 1000), axis("wrist", 9000)));
        JointPath path = new JointPath(
                arm, new Vector(0, 0, 0), AxisValues.of(135, -45, 0, 0), AxisValues.of(-WAY, -0.820 * WAY, 0, 0));
        return new JointMotion(path, new MoveConditions(1, ceiling, 0)).at(100, 100);
    }

    @Test
    void takesTheTipToTwoMetresASecond() {
        MoveMotion legal = move(SPEED, Double.POSITIVE_INFINITY);

        assertThat(requireNonNull(legal.peaks()).fullPowerTool()).isCloseTo(2040, within(5.0));
        assertThat(requireNonNull(legal.durationS())).isCloseTo(1.477, within(1e-9));
    }

    @Test
    void needsLessThanHalfTheSpeedForOneMetreASecond() {
        MoveMotion slow = move(Math.toDegrees(0.38), Double.POSITIVE_INFINITY);

        assertThat(requireNonNull(slow.peaks()).fullPowerTool()).isLessThan(1000);
        assertThat(requireNonNull(slow.durationS())).isCloseTo(2.457, within(5e-4));
        assertThat(requireNonNull(move(Math.toDegrees(0.39), Double.POSITIVE_INFINITY)
                                .peaks())
                        .fullPowerTool())
                .isGreaterThan(1000);
    }

    @Test
    void isHeldToOneMetreASecondAtThatSpeed() {
        MoveMotion held = move(SPEED, 1000);
        Profile profile = requireNonNull(requireNonNull(held.trace()).held());

        assertThat(requireNonNull(held.peaks()).heldTool()).isEqualTo(1000);
        assertThat(Math.toRadians(profile.cruise() * WAY)).isBetween(0.38, 0.39);
    }
}
