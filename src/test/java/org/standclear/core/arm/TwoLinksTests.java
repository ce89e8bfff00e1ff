package org.standclear.core.arm;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.Random;
import org.junit.jupiter.api.Test;
import org.standclear.core.arm.TwoLinks.Pair;

class TwoLinksTests {

    private static final double DEGREE = Math.PI / 180;
    private static final TwoLinks ONE_METRE = new TwoLinks(1, 1);

    /** Published worked example of two links of 1 m (S); KDL agrees. */
    @Test
    void reachesOneOneOnBothSides() {
        Pair right = ONE_METRE.solve(1, 1, Elbow.RIGHT);
        Pair left = ONE_METRE.solve(1, 1, Elbow.LEFT);

        assertThat(right.q1() / DEGREE).isCloseTo(0, within(1e-12));
        assertThat(right.q2() / DEGREE).isCloseTo(90, within(1e-12));
        assertThat(left.q1() / DEGREE).isCloseTo(90, within(1e-12));
        assertThat(left.q2() / DEGREE).isCloseTo(-90, within(1e-12));
    }

    /** J at (0, 90 deg) is [[-1, -1], [1, 0]] (S): its inverse takes each column back to one axis. */
    @Test
    void invertsThePublishedJacobian() {
        Pair first = ONE_METRE.rates(1, 1, -1, 1, Elbow.RIGHT);
        Pair second = ONE_METRE.rates(1, 1, -1, 0, Elbow.RIGHT);

        assertThat(first.q1()).isCloseTo(1, within(1e-12));
        assertThat(first.q2()).isCloseTo(0, within(1e-12));
        assertThat(second.q1()).isCloseTo(0, within(1e-12));
        assertThat(second.q2()).isCloseTo(1, within(1e-12));
    }

    @Test
    void solvesWhatTheFormulaGives() {
        Random random = new Random(7);
        for (int i = 0; i < 5000; i++) {
            TwoLinks links = new TwoLinks(50 + random.nextInt(500), 50 + random.nextInt(500));
            double q1 = (random.nextDouble() * 2 - 1) * Math.PI;
            double q2 = random.nextDouble() * Math.PI;
            Elbow side = random.nextBoolean() ? Elbow.RIGHT : Elbow.LEFT;
            double x = links.first() * Math.cos(q1) + links.second() * Math.cos(q1 + side.sign() * q2);
            double y = links.first() * Math.sin(q1) + links.second() * Math.sin(q1 + side.sign() * q2);

            Pair found = links.solve(x, y, side);

            assertThat(found.q2() * side.sign()).isNotNegative();
            assertThat(links.first() * Math.cos(found.q1()) + links.second() * Math.cos(found.q1() + found.q2()))
                    .isCloseTo(x, within(1e-9));
            assertThat(links.first() * Math.sin(found.q1()) + links.second() * Math.sin(found.q1() + found.q2()))
                    .isCloseTo(y, within(1e-9));
        }
    }

    @Test
    void staysExactNearTheStretchedArm() {
        TwoLinks links = new TwoLinks(225, 175);
        for (double bend : new double[] {1e-2, 1e-4, 1e-6}) {
            double x = 225 + 175 * Math.cos(bend);
            double y = 175 * Math.sin(bend);
            // an angle of a millionth is a ten-billionth of a millimetre short of the stretched arm
            assertThat(links.solve(x, y, Elbow.RIGHT).q2()).isCloseTo(bend, within(1e-3 * bend));
        }
        assertThat(links.solve(400, 0, Elbow.LEFT).q2()).isCloseTo(0, within(1e-12));
    }
}
