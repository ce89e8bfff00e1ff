package org.standclear.core.arm.articulated;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.Arrays;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.standclear.core.ReferenceTable;
import org.standclear.core.arm.Arm;
import org.standclear.core.arm.AxisValues;
import org.standclear.core.arm.Posture;
import org.standclear.core.arm.Solution;
import org.standclear.core.arm.ToolPose;
import org.standclear.core.geometry.Rotation;
import org.standclear.core.geometry.Vector;

class ArticulatedArmTests {

    private static final Vector NO_OFFSET = new Vector(0, 0, 0);
    private static final Vector OFFSET = new Vector(30, -20, 110);

    private static double distance(Vector a, Vector b) {
        return a.minus(b).length();
    }

    /** The lecture's table in m: q = (0, 0, -90, 0, 0, 0) stands at (0.86487, 0.14909, 0.0203) (C, two programs). */
    @Test
    void standsWhereTheLecturesTableSays() {
        Vector place = SixAxes.lecture()
                .toolPose(AxisValues.of(0, 0, -90, 0, 0, 0), NO_OFFSET)
                .place();

        assertThat(distance(place, new Vector(864.87, 149.09, 20.3))).isLessThan(1e-9);
    }

    /** Wrist at (0.58707, 0.51110, 0.26003) m, and eight inverse solutions there (C, two programs). */
    @Test
    void findsTheEightSolutionsOfTheLecturesTable() {
        ArticulatedArm arm = SixAxes.lecture();
        AxisValues known = AxisValues.of(30, -40, -45, 45, 25, 33);
        ToolPose pose = arm.toolPose(known, NO_OFFSET);

        assertThat(distance(pose.place(), new Vector(587.07, 511.10, 260.03))).isLessThan(0.01);
        List<AxisValues> solutions = arm.solutions(pose, NO_OFFSET);
        assertThat(solutions).hasSize(8);
        assertThat(solutions).anyMatch(axes -> isSame(axes, known));
        assertThat(solutions.stream().map(arm::posture)).containsExactlyElementsOf(Posture.ALL);
        for (AxisValues axes : solutions) {
            isThere(arm, axes, pose, NO_OFFSET, 1e-9);
        }
    }

    private static boolean isSame(AxisValues a, AxisValues b) {
        for (int i = 0; i < 6; i++) {
            if (!(Math.abs(Math.IEEEremainder(a.get(i) - b.get(i), 360)) < 1e-6)) {
                return false;
            }
        }
        return true;
    }

    private static void isThere(Arm arm, AxisValues axes, ToolPose wanted, Vector offset, double error) {
        ToolPose found = arm.toolPose(axes, offset);
        assertThat(distance(found.place(), wanted.place())).isLessThan(error);
        Vector apart = found.rotation().times(wanted.rotation().inverse()).turn();
        assertThat(Math.toDegrees(apart.length())).isLessThan(error);
    }

    /** KDL, 300 random tables, few of them with a closed form (C). */
    @Test
    void agreesWithKdlOnAnyTable() {
        List<double[]> rows = ReferenceTable.rows("articulated.csv");
        assertThat(rows).hasSize(300);
        for (double[] row : rows) {
            ArticulatedArm arm = SixAxes.of(Arrays.copyOf(row, 18));
            AxisValues at = SixAxes.axes(row, 18);
            AxisValues rates = SixAxes.axes(row, 24);

            standsThere(arm, at, NO_OFFSET, row, 30);
            assertThat(arm.toolSpeed(at, rates, NO_OFFSET)).isCloseTo(row[42], within(1e-9 * row[42]));
            assertThat(arm.toolSpeedBound(rates, NO_OFFSET)).isGreaterThanOrEqualTo(row[42]);
        }
    }

    private static void standsThere(ArticulatedArm arm, AxisValues at, Vector offset, double[] row, int from) {
        ToolPose pose = arm.toolPose(at, offset);
        assertThat(distance(pose.place(), new Vector(row[from], row[from + 1], row[from + 2])))
                .isLessThan(1e-9);
        Rotation turned = arm.flangeTurned(at);
        double[] found = {
            turned.xx(),
            turned.xy(),
            turned.xz(),
            turned.yx(),
            turned.yy(),
            turned.yz(),
            turned.zx(),
            turned.zy(),
            turned.zz()
        };
        Rotation again = pose.rotation();
        assertThat(again.times(turned.inverse()).turn().length()).isLessThan(1e-12);
        for (int i = 0; i < 9; i++) {
            assertThat(found[i]).isCloseTo(row[from + 3 + i], within(1e-12));
        }
    }

    /**
     * KDL, 300 random arms whose wrist axes meet, with a tool: place, turning, speeds of tool, elbow and wrist (C); the
     * closed form comes back to the axis values, and every solution is where it should be.
     */
    @Test
    void agreesWithKdlOnArmsWithAWrist() {
        List<double[]> rows = ReferenceTable.rows("spherical.csv");
        assertThat(rows).hasSize(300);
        for (double[] row : rows) {
            ArticulatedArm arm = SixAxes.of(Arrays.copyOf(row, 18));
            Vector offset = new Vector(row[18], row[19], row[20]);
            AxisValues at = SixAxes.axes(row, 21);
            AxisValues rates = SixAxes.axes(row, 27);

            assertThat(arm.hasClosedForm()).isTrue();
            standsThere(arm, at, offset, row, 33);
            assertThat(arm.toolSpeed(at, rates, offset)).isCloseTo(row[45], within(1e-9 * row[45]));
            assertThat(arm.turnRate(at, rates)).isCloseTo(row[46], within(1e-9 * row[46]));
            assertThat(fastestLinkEnd(arm, at, rates)).isCloseTo(row[47], within(1e-9 * row[47]));
            comesBack(arm, at, offset);
        }
    }

    private static double fastestLinkEnd(Arm arm, AxisValues at, AxisValues rates) {
        double fastest = 0;
        for (int end = 0; end < arm.linkEnds(); end++) {
            fastest = Math.max(fastest, arm.linkEndSpeed(end, at, rates));
        }
        return fastest;
    }

    private static void comesBack(ArticulatedArm arm, AxisValues at, Vector offset) {
        ToolPose pose = arm.toolPose(at, offset);
        Solution solution = arm.solve(pose, arm.posture(at), offset, at);
        assertThat(solution).isInstanceOfSatisfying(Solution.Found.class, found -> {
            for (int i = 0; i < 6; i++) {
                assertThat(found.axes().get(i)).isCloseTo(at.get(i), within(1e-5));
            }
        });
        List<AxisValues> all = arm.solutions(pose, offset);
        assertThat(all).hasSizeBetween(2, 8);
        all.forEach(axes -> isThere(arm, axes, pose, offset, 1e-8));
    }

    /** The numeric inverse of KDL's random tables: back from near by, and its error as it states it. */
    @Test
    void comesBackStepByStepWhereThereIsNoClosedForm() {
        int without = 0;
        for (double[] row : ReferenceTable.rows("articulated.csv")) {
            ArticulatedArm arm = SixAxes.of(Arrays.copyOf(row, 18));
            AxisValues at = SixAxes.axes(row, 18);
            ToolPose pose = arm.toolPose(at, OFFSET);
            AxisValues nearBy = at.plus(AxisValues.of(1, -1, 1, -1, 1, -1), 2);
            if (!arm.hasClosedForm()
                    && arm.solve(pose, arm.posture(at), OFFSET, nearBy) instanceof Solution.Found found) {
                without++;
                isThere(arm, found.axes(), pose, OFFSET, 1e-6);
            }
        }
        // tables drawn at random may be singular everywhere, such as three parallel axes in a row
        assertThat(without).isGreaterThan(270);
    }

    @Test
    void saysWhyAPlaceIsOutOfReach() {
        ArticulatedArm arm = SixAxes.lecture();
        Posture posture = Posture.ALL.get(0);

        Solution far = arm.solve(new ToolPose(new Vector(900, 0, 0), 0), posture, NO_OFFSET, null);
        Solution near = arm.solve(new ToolPose(new Vector(100, 0, 300), 0), posture, NO_OFFSET, null);

        assertThat(far)
                .isInstanceOfSatisfying(
                        Solution.Unsolved.class,
                        none -> assertThat(none.why())
                                .isEqualTo(
                                        "would put the wrist 887.6 mm from the shoulder; it gets from 1.8 to 865.3 mm"));
        assertThat(near)
                .isInstanceOfSatisfying(
                        Solution.Unsolved.class,
                        none -> assertThat(none.why())
                                .isEqualTo(
                                        "would bring the wrist within 100 mm of axis 1; the shoulder keeps it 149.1 mm away"));
    }

    @Test
    void takesTheTurnNearestToWhereTheAxesStood() {
        ArticulatedArm arm = SixAxes.lecture();
        AxisValues at = AxisValues.of(30, -40, -45, 405, 25, -327);
        ToolPose pose = arm.toolPose(at, OFFSET);

        assertThat(arm.solve(pose, arm.posture(at), OFFSET, at)).isInstanceOfSatisfying(Solution.Found.class, found -> {
            assertThat(found.axes().get(3)).isCloseTo(405, within(1e-6));
            assertThat(found.axes().get(5)).isCloseTo(-327, within(1e-6));
        });
    }

    @Test
    void belongsToBothWristsOnlyWhenTheWristIsStraight() {
        ArticulatedArm arm = SixAxes.lecture();
        AxisValues straight = AxisValues.of(30, -40, -45, 45, 0, 33);
        AxisValues bent = AxisValues.of(30, -40, -45, 45, -20, 33);
        Arm.Reached fromStraight = reached(arm, straight);
        Arm.Reached toBent = reached(arm, bent);
        Arm.Reached other = reached(arm, AxisValues.of(30, -40, -45, 45, 20, 33));

        assertThat(arm.shared(fromStraight, toBent, OFFSET)).isEqualTo(toBent.branch());
        assertThat(arm.shared(other, toBent, OFFSET)).isNull();
        assertThat(arm.shared(toBent, toBent, OFFSET)).isEqualTo(toBent.branch());
    }

    private static Arm.Reached reached(ArticulatedArm arm, AxisValues at) {
        return new Arm.Reached(arm.toolPose(at, OFFSET), arm.posture(at));
    }
}
