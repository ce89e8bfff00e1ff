package org.standclear.core.motion;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.List;
import java.util.stream.Stream;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import org.standclear.core.arm.Axis;
import org.standclear.core.arm.AxisValues;
import org.standclear.core.arm.Elbow;
import org.standclear.core.arm.LineFollowing;
import org.standclear.core.arm.ScaraArm;
import org.standclear.core.arm.Solution;
import org.standclear.core.arm.ToolLine;
import org.standclear.core.arm.ToolPose;
import org.standclear.core.geometry.Vector;
import org.standclear.core.quantity.Interval;

/** How finely a line is cut where the axes race, and where only rounding is left. */
class AxisTrackTests {

    private static final Vector NO_OFFSET = new Vector(0, 0, 0);

    /** A file must not fill the memory: a line past the stretched arm, as near to it as double precision can tell. */
    @ParameterizedTest
    @ValueSource(doubles = {1, 1e-2, 1e-4, 1e-5, 1e-6, 1e-7, 1e-8, 1e-9, 1e-10, 0})
    void staysSmallBesideAStretchedArm(double mmFromTheBorder) {
        ScaraArm arm = arm(127, 213);
        assertThat(track(arm, 340 - mmFromTheBorder).samples()).isLessThan(5_000);
    }

    /** The same past axis 1, which an arm of two equal links reaches. */
    @ParameterizedTest
    @ValueSource(doubles = {1, 1e-2, 1e-4, 1e-5, 1e-6, 1e-7, 1e-8, 1e-9, 1e-10, 0})
    void staysSmallBesideAxisOne(double mmFromTheAxis) {
        assertThat(track(arm(200, 200), mmFromTheAxis).samples()).isLessThan(5_000);
    }

    private static ScaraArm arm(double l1, double l2) {
        List<Axis> axes = Stream.of("a", "b", "c", "d")
                .map(name -> new Axis(name, !name.equals("c"), new Interval(-1e6, 1e6), 100.0, 1000))
                .toList();
        return new ScaraArm(l1, l2, axes);
    }

    /** Across the y axis at a distance from axis 1. */
    private static AxisTrack track(ScaraArm arm, double y) {
        double half = Math.min(71.3, Math.sqrt(Math.max(0, arm.farthest() * arm.farthest() - y * y)));
        // at the border itself there is no way across: straight out to it
        ToolLine line = half < 1e-3
                ? new ToolLine(new ToolPose(new Vector(0, y - 71.3, 10), 0), new Vector(0, y, 10), 0)
                : new ToolLine(new ToolPose(new Vector(-half, y, 10), 0), new Vector(half, y, 10), 0);
        Solution.Found found = (Solution.Found) arm.solve(line.from(), Elbow.RIGHT, NO_OFFSET, null);
        AxisValues axes = found.axes();
        LineFollowing following = arm.follow(line, axes, Elbow.RIGHT, NO_OFFSET);
        assertThat(following.leavesReach()).isEmpty();
        return new AxisTrack(arm, following, line, axes);
    }
}
