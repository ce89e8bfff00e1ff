package org.standclear.core.arm.articulated;

import java.util.List;
import org.jspecify.annotations.Nullable;
import org.standclear.core.arm.AxisValues;
import org.standclear.core.geometry.Rotation;
import org.standclear.core.geometry.Vector;

/**
 * The inverse by damped Newton steps (Levenberg and Marquardt) from a first guess, for tables without a closed form.
 * What it returns puts the flange where it should be to {@value #ERROR_MM} mm and {@value #ERROR_DEG} deg.
 */
final class Newton {

    /** The flange stands at most so far from where it should, mm. */
    static final double ERROR_MM = 1e-7;

    /** It is turned at most so far from how it should be, deg. */
    static final double ERROR_DEG = 1e-7;

    /**
     * Where it stops, mm: the rounding of places a metre away. Beside a singular place the axes are off by thousands of
     * times what the flange is, so it does not stop as soon as the flange is near enough.
     */
    private static final double EXACT = 2e-12;

    /** After so many steps that do not come nearer it is as near as rounding lets it. */
    private static final int MOST_VAIN = 3;

    /** After so many it stands in a place that no small step leads on from. */
    private static final int HOPELESS = 6;

    /** Every so many steps have to bring it this much nearer; else it ends up beside the place. */
    private static final int SPELL = 8;

    private static final double LEAST_GAIN = 0.6;

    private static final int ROUNDS = 60;

    /** A step turns no axis farther than this, rad: else a guess near a singular place is thrown far away. */
    private static final double LONGEST_STEP = 0.5;

    private static final double FIRST_DAMPING = 1e-3;

    private final List<DhRow> rows;

    /** Weighs turning against going: a turn of 1 rad counts as so many mm. */
    private final double mmPerRad;

    Newton(List<DhRow> rows) {
        this.rows = rows;
        this.mmPerRad = Math.max(1, rows.stream().mapToDouble(DhRow::length).sum() / 4);
    }

    /** The axis values, deg; null when the steps do not end there. */
    double @Nullable [] solve(Vector flange, Rotation turned, double[] guess) {
        double[] q = guess.clone();
        double[] error = error(q, flange, turned);
        double damping = FIRST_DAMPING;
        int vain = 0;
        double before = size(error);
        for (int round = 0; round < ROUNDS && !isWithin(EXACT, error); round++) {
            double[] next = stepped(q, error, damping * size(error));
            double[] left = error(next, flange, turned);
            if (size(left) < size(error)) {
                q = next;
                error = left;
                damping = damping / 10;
                vain = 0;
            } else {
                damping = Math.max(damping, FIRST_DAMPING) * 10;
                vain++;
            }
            if (vain == MOST_VAIN && isThere(error)) {
                return q;
            }
            if (round % SPELL == SPELL - 1) {
                if (vain >= HOPELESS || size(error) > LEAST_GAIN * before) {
                    break;
                }
                before = size(error);
            }
        }
        return isThere(error) ? q : null;
    }

    private boolean isWithin(double mm, double[] error) {
        return size(error) <= mm;
    }

    private boolean isThere(double[] error) {
        double mm = Math.sqrt(error[0] * error[0] + error[1] * error[1] + error[2] * error[2]);
        double rad = Math.sqrt(error[3] * error[3] + error[4] * error[4] + error[5] * error[5]) / mmPerRad;
        return mm <= ERROR_MM && Math.toDegrees(rad) <= ERROR_DEG;
    }

    private static double size(double[] error) {
        double sum = 0;
        for (double one : error) {
            sum += one * one;
        }
        return Math.sqrt(sum);
    }

    private double[] error(double[] q, Vector flange, Rotation turned) {
        LinkFrames frames = new LinkFrames(rows, AxisValues.of(q));
        Vector way = flange.minus(frames.flange());
        Vector turn = turned.times(frames.flangeTurned().inverse()).turn().times(mmPerRad);
        return new double[] {way.x(), way.y(), way.z(), turn.x(), turn.y(), turn.z()};
    }

    /** One step of (J'J + damping) dq = J' error. */
    private double[] stepped(double[] q, double[] error, double damping) {
        LinkFrames frames = new LinkFrames(rows, AxisValues.of(q));
        double[][] jacobian = frames.jacobian(frames.flange());
        for (int row = 3; row < 6; row++) {
            for (int i = 0; i < 6; i++) {
                jacobian[row][i] *= mmPerRad;
            }
        }
        double[][] normal = new double[6][6];
        double[] right = new double[6];
        for (int i = 0; i < 6; i++) {
            for (int k = 0; k < 6; k++) {
                right[i] += jacobian[k][i] * error[k];
                for (int j = 0; j < 6; j++) {
                    normal[i][j] += jacobian[k][i] * jacobian[k][j];
                }
            }
            normal[i][i] += damping * mmPerRad;
        }
        double[] step = LinearSystem.solve(normal, right);
        double longest = 0;
        for (double one : step) {
            longest = Math.max(longest, Math.abs(one));
        }
        double part = longest > LONGEST_STEP ? LONGEST_STEP / longest : 1;
        double[] next = q.clone();
        for (int i = 0; i < 6; i++) {
            next[i] += Math.toDegrees(step[i] * part);
        }
        return next;
    }
}
