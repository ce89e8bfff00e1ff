package org.standclear.core.arm;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.List;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.standclear.core.ReferenceTable;
import org.standclear.core.geometry.Vector;
import org.standclear.core.quantity.Interval;

class ArmTests {

    private static final Vector NO_OFFSET = new Vector(0, 0, 0);

    private static Axis axis(String name, boolean rotary, double min, double max) {
        return new Axis(name, rotary, new Interval(min, max), 100.0, 1000);
    }

    private static ScaraArm scara(double l1, double l2) {
        return new ScaraArm(
                l1,
                l2,
                List.of(
                        axis("shoulder", true, -200, 200),
                        axis("elbow", true, -170, 170),
                        axis("lift", false, 0, 400),
                        axis("wrist", true, -360, 360)));
    }

    private static GantryArm gantry() {
        return new GantryArm(Stream.of("x", "y", "z", "yaw")
                .map(name -> axis(name, name.equals("yaw"), -500, 500))
                .toList());
    }

    /**
     * Lynch and Park, Modern Robotics, exercise 4.2 (S), KDL agrees: an RRRP arm, all lengths 1, at (0, 90, -90 deg, 1)
     * stands at (-1, 1, 2) and is not turned. Its arm points along y at zero, ours along x: the shoulder is 90 deg ahead
     * and the tool's frame 90 deg behind; its column of 1 is the tool's offset here.
     */
    @Test
    void standsWhereModernRoboticsSays() {
        AxisValues at = AxisValues.of(0 + 90, 90, 1, -90 - 90);

        ToolPose pose = scara(1, 1).toolPose(at, new Vector(0, 0, 1));

        assertThat(pose.place().minus(new Vector(-1, 1, 2)).length()).isLessThan(1e-12);
        assertThat(pose.yaw()).isCloseTo(0, within(1e-12));
    }

    /** |J u| at q = (135, -45 deg), u = (-1, -0.820) is 2.624 m/rad (S), two links of 1 m. */
    @Test
    void movesAsFastAsThePublishedJacobianSays() {
        AxisValues at = AxisValues.of(135, -45, 0, 0);
        AxisValues rates = AxisValues.of(-Math.toDegrees(1), -Math.toDegrees(0.820), 0, 0);

        assertThat(scara(1, 1).toolSpeed(at, rates, NO_OFFSET)).isCloseTo(2.624, within(5e-4));
    }

    /** KDL, 400 random arms and states (C). */
    @Test
    void agreesWithKdlOnScaras() {
        List<double[]> rows = ReferenceTable.rows("scara.csv");
        assertThat(rows).hasSize(400);
        for (double[] row : rows) {
            ScaraArm arm = scara(row[0], row[1]);
            Vector offset = new Vector(row[2], row[3], row[4]);
            AxisValues at = AxisValues.of(row[5], row[6], row[7], row[8]);
            AxisValues rates = AxisValues.of(row[9], row[10], row[11], row[12]);

            compare(arm, offset, at, rates, new Vector(row[13], row[14], row[15]), row[16]);
            comesBack(arm, offset, at);
        }
    }

    /** KDL, 200 random states (C). */
    @Test
    void agreesWithKdlOnGantries() {
        List<double[]> rows = ReferenceTable.rows("gantry.csv");
        assertThat(rows).hasSize(200);
        for (double[] row : rows) {
            Vector offset = new Vector(row[0], row[1], row[2]);
            AxisValues at = AxisValues.of(row[3], row[4], row[5], row[6]);
            AxisValues rates = AxisValues.of(row[7], row[8], row[9], row[10]);

            compare(gantry(), offset, at, rates, new Vector(row[11], row[12], row[13]), row[14]);
            comesBack(gantry(), offset, at);
        }
    }

    private static void compare(
            Arm arm, Vector offset, AxisValues at, AxisValues rates, Vector place, double toolSpeed) {
        assertThat(arm.toolPose(at, offset).place().minus(place).length()).isLessThan(1e-9);
        assertThat(arm.toolSpeed(at, rates, offset)).isCloseTo(toolSpeed, within(1e-9 * toolSpeed));
        assertThat(arm.toolSpeedBound(rates, offset)).isGreaterThanOrEqualTo(toolSpeed * (1 - 1e-12));
    }

    /** The inverse finds the values from which the place was computed. */
    private static void comesBack(Arm arm, Vector offset, AxisValues at) {
        ToolPose pose = arm.toolPose(at, offset);
        Solution solution = arm.solve(pose, at.get(1) < 0 ? Elbow.LEFT : Elbow.RIGHT, offset, at);

        assertThat(solution).isInstanceOfSatisfying(Solution.Found.class, found -> {
            for (int i = 0; i < at.count(); i++) {
                assertThat(found.axes().get(i)).isCloseTo(at.get(i), within(1e-6));
            }
            assertThat(found.faults()).isEmpty();
        });
    }

    private static Solution solve(double x, double y, Elbow side) {
        return scara(225, 175).solve(new ToolPose(new Vector(x, y, 10), 0), side, NO_OFFSET, null);
    }

    @Test
    void reachesFromTheHoleToTheStretchedArm() {
        assertThat(solve(400, 0, Elbow.LEFT)).isInstanceOf(Solution.Found.class);
        assertThat(solve(400.0000009, 0, Elbow.LEFT)).isInstanceOf(Solution.Found.class);
        assertThat(solve(400.0000011, 0, Elbow.LEFT)).isEqualTo(new Solution.OutOfReach(400.0000011, 50, 400));
        assertThat(solve(0, 50, Elbow.RIGHT)).isInstanceOf(Solution.Found.class);
        assertThat(solve(0, 49.9999991, Elbow.RIGHT)).isInstanceOf(Solution.Found.class);
        assertThat(solve(0, 49.9999989, Elbow.RIGHT)).isInstanceOf(Solution.OutOfReach.class);
        assertThat(solve(Double.NaN, 0, Elbow.RIGHT)).isInstanceOf(Solution.OutOfReach.class);
    }

    @Test
    void belongsToBothSidesOnlyWhenStretched() {
        ScaraArm arm = scara(225, 175);
        Arm.Reached left = new Arm.Reached(new ToolPose(new Vector(0, 300, 0), 0), Elbow.LEFT);
        Arm.Reached stretched = new Arm.Reached(new ToolPose(new Vector(0, 400, 0), 0), Elbow.RIGHT);
        Arm.Reached bent = new Arm.Reached(new ToolPose(new Vector(0, 399.99, 0), 0), Elbow.RIGHT);

        assertThat(arm.shared(left, stretched, NO_OFFSET)).isEqualTo(Elbow.LEFT);
        assertThat(arm.shared(stretched, left, NO_OFFSET)).isEqualTo(Elbow.LEFT);
        assertThat(arm.shared(left, bent, NO_OFFSET)).isNull();
        assertThat(arm.shared(bent, left, NO_OFFSET)).isNull();
    }

    @Test
    void namesTheAxisThatLeavesItsRange() {
        ScaraArm arm = scara(225, 175);
        ToolPose high = new ToolPose(new Vector(0, 300, 400.1), 0);

        assertThat(arm.solve(high, Elbow.RIGHT, NO_OFFSET, null))
                .isInstanceOfSatisfying(
                        Solution.Found.class,
                        found -> assertThat(found.faults())
                                .containsExactly(new RangeFault(arm.axes().get(2), 400.1)));
    }
}
