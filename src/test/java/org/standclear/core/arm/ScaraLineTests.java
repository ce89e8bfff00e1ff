package org.standclear.core.arm;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.OptionalDouble;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import org.standclear.core.geometry.Vector;

/** Straight lines near the borders of reach; the borders are geometry: 225 + 175 and 225 - 175 mm. */
class ScaraLineTests {

    private static final TwoLinks LINKS = new TwoLinks(225, 175);

    private static LineFollowing line(double x1, double y1, double x2, double y2, double turn, Vector offset) {
        ToolLine line = new ToolLine(new ToolPose(new Vector(x1, y1, 0), 0), new Vector(x2, y2, 0), turn);
        return new ScaraLine(LINKS, line, AxisValues.of(0, 0, 0, 0), Elbow.RIGHT, offset);
    }

    private static OptionalDouble leaves(double x1, double y1, double x2, double y2) {
        return line(x1, y1, x2, y2, 0, new Vector(0, 0, 0)).leavesReach();
    }

    @ParameterizedTest
    @ValueSource(doubles = {40, 49, 49.9, 49.999, 49.999998})
    void leavesReachThroughTheHole(double y) {
        OptionalDouble where = leaves(-200, y, 200, y);

        assertThat(where).isPresent();
        assertThat(200 - where.getAsDouble()).isCloseTo(Math.sqrt(50 * 50 - y * y), within(0.02));
    }

    @ParameterizedTest
    @ValueSource(doubles = {49.9999995, 50, 50.000001, 50.01, 60})
    void touchesTheHole(double y) {
        assertThat(leaves(-200, y, 200, y)).isEmpty();
    }

    @Test
    void staysInsideFromStretchedToStretched() {
        assertThat(leaves(400, 0, 0, 400)).isEmpty();
        assertThat(leaves(0, 200, 0, 400)).isEmpty();
        assertThat(leaves(0, 200, 0, 400.1).getAsDouble()).isCloseTo(200, within(1e-3));
    }

    @Test
    void leavesReachWhereOnlyTheTurningFlangeDoes() {
        // the tool point keeps to the circle of 320 mm; the flange, 90 mm beside it, swings out to 410
        Vector offset = new Vector(90, 0, 0);
        assertThat(line(0, 320, 1, 320, 180, offset).leavesReach()).isEmpty();
        assertThat(line(0, 320, 1, 320, -180, offset).leavesReach()).isPresent();
    }

    @Test
    void ratesAreDifferencesOfTheAxes() {
        Vector offset = new Vector(30, -20, -60);
        LineFollowing line = line(-150, 220, 180, 260, 75, offset);
        AxisValues near = line.at(0, AxisValues.of(90, 90, 0, 0));
        for (double mm = 5; mm < 330; mm += 5) {
            AxisValues before = line.at(mm - 1e-4, near);
            AxisValues after = line.at(mm + 1e-4, before);
            AxisValues rates = line.ratesPerMm(mm);
            for (int axis = 0; axis < 4; axis++) {
                double difference = (after.get(axis) - before.get(axis)) / 2e-4;
                assertThat(rates.get(axis)).isCloseTo(difference, within(1e-6 + 1e-5 * Math.abs(difference)));
            }
            near = after;
        }
    }
}
