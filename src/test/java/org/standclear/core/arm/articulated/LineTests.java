package org.standclear.core.arm.articulated;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import org.standclear.core.arm.AxisValues;
import org.standclear.core.arm.LineFollowing;
import org.standclear.core.arm.ToolLine;
import org.standclear.core.arm.ToolPose;
import org.standclear.core.geometry.Vector;

/** Straight lines of six axes; forward kinematics, which KDL agrees with, says whether the tool is on them (C). */
class LineTests {

    private static final Vector OFFSET = new Vector(20, -10, 90);
    private static final AxisValues FROM = AxisValues.of(30, -40, -45, 45, 50, 33);

    /** With d5 = 0 the wrist axes meet and the form is closed; with 60 mm the axes are followed step by step. */
    private static ArticulatedArm arm(double d5) {
        return SixAxes.of(0, -90, 0, 431.8, 0, 0, 20.3, -90, 149.09, 0, 90, 433.07, 0, -90, d5, 0, 0, 50);
    }

    private static ToolLine line(ArticulatedArm arm) {
        ToolPose from = arm.toolPose(FROM, OFFSET);
        ToolPose to = arm.toolPose(FROM.plus(AxisValues.of(20, 12, 10, -15, 10, 40), 1), OFFSET);
        return ToolLine.between(from, to);
    }

    @ParameterizedTest
    @ValueSource(doubles = {0, 60})
    void keepsTheToolOnTheLine(double d5) {
        ArticulatedArm arm = arm(d5);
        ToolLine line = line(arm);
        assertThat(arm.hasClosedForm()).isEqualTo(d5 == 0);
        LineFollowing following = arm.follow(line, FROM, arm.posture(FROM), OFFSET);
        assertThat(following.leavesReach()).isEmpty();
        AxisValues at = FROM;
        for (int i = 0; i <= 50; i++) {
            double mm = line.length() * i / 50;
            at = following.at(mm, at);
            ToolPose found = arm.toolPose(at, OFFSET);
            ToolPose wanted = line.at(mm);
            assertThat(found.place().minus(wanted.place()).length()).isLessThan(1e-6);
            assertThat(found.rotation()
                            .times(wanted.rotation().inverse())
                            .turn()
                            .length())
                    .isLessThan(1e-8);
        }
        // the shortest rotation from one end to the other
        assertThat(line.turn()).isBetween(0.0, 180.0);
    }

    @ParameterizedTest
    @ValueSource(doubles = {0, 60})
    void tellsHowFastTheAxesFollow(double d5) {
        ArticulatedArm arm = arm(d5);
        ToolLine line = line(arm);
        LineFollowing following = arm.follow(line, FROM, arm.posture(FROM), OFFSET);
        for (int i = 1; i < 10; i++) {
            double mm = line.length() * i / 10;
            AxisValues rates = following.ratesPerMm(mm);
            AxisValues before = following.at(mm - 0.01, FROM);
            AxisValues after = following.at(mm + 0.01, before);
            for (int axis = 0; axis < 6; axis++) {
                double brute = (after.get(axis) - before.get(axis)) / 0.02;
                assertThat(rates.get(axis)).isCloseTo(brute, within(1e-4 * Math.abs(brute) + 1e-4));
            }
        }
    }

    @ParameterizedTest
    @ValueSource(doubles = {0, 60})
    void tellsWhereALineLeavesTheReach(double d5) {
        ArticulatedArm arm = arm(d5);
        ToolPose from = arm.toolPose(FROM, OFFSET);
        ToolLine out = new ToolLine(from, from.place().times(3), 0);

        double leaves =
                arm.follow(out, FROM, arm.posture(FROM), OFFSET).leavesReach().orElseThrow();

        assertThat(leaves).isBetween(1.0, out.length() - 1);
    }
}
