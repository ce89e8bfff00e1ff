package org.standclear.core.arm.articulated;

import java.util.ArrayList;
import java.util.List;
import org.jspecify.annotations.Nullable;
import org.standclear.core.arm.AxisValues;
import org.standclear.core.arm.Posture;
import org.standclear.core.arm.ToolPose;
import org.standclear.core.geometry.Rotation;
import org.standclear.core.geometry.Vector;
import org.standclear.core.quantity.ShownNumber;
import org.standclear.core.quantity.Tolerance;

/** Which axis values bring the tool somewhere: in closed form where the table allows it, else step by step. */
final class Inverse {

    /** So many first guesses spread over all axis values are tried; where all fail the place counts as out of reach. */
    private static final int GUESSES = 240;

    private static final double[] ZEROS = new double[6];

    /** Bases of the guesses, spread evenly over all axis values (Halton). */
    private static final int[] PRIMES = {2, 3, 5, 7, 11, 13};

    private final List<DhRow> rows;
    private final @Nullable ClosedForm closedForm;
    private final Newton newton;

    /** The inverse of the same arm with its wrist axes moved into one point: where to begin looking. */
    private final @Nullable ClosedForm likeness;

    private final double farthest;

    /** Axis values in deg on some turn, or why there are none. */
    record Result(double @Nullable [] axes, String why) {}

    Inverse(List<DhRow> rows) {
        this.rows = rows;
        this.closedForm = ClosedForm.fits(rows) ? new ClosedForm(rows) : null;
        this.newton = new Newton(rows);
        List<DhRow> wrist = withWristInOnePoint(rows);
        this.likeness = ClosedForm.fits(wrist) ? new ClosedForm(wrist) : null;
        this.farthest = rows.stream().mapToDouble(DhRow::length).sum();
    }

    private static List<DhRow> withWristInOnePoint(List<DhRow> rows) {
        List<DhRow> moved = new ArrayList<>(rows);
        moved.set(
                3,
                new DhRow(0, rows.get(3).alpha(), rows.get(3).d(), rows.get(3).theta()));
        moved.set(4, new DhRow(0, rows.get(4).alpha(), 0, rows.get(4).theta()));
        return moved;
    }

    @Nullable
    ClosedForm closedForm() {
        return closedForm;
    }

    Newton newton() {
        return newton;
    }

    Result solve(ToolPose target, Posture posture, Vector offset, @Nullable AxisValues before) {
        Rotation turned = target.rotation();
        Vector flange = target.place().minus(turned.times(offset));
        double[] near = before == null ? ZEROS : values(before);
        return closedForm == null
                ? stepByStep(flange, turned, posture, near)
                : inClosedForm(closedForm, flange, turned, posture, near);
    }

    static double[] values(AxisValues axes) {
        double[] values = new double[axes.count()];
        for (int i = 0; i < values.length; i++) {
            values[i] = axes.get(i);
        }
        return values;
    }

    private static Result inClosedForm(
            ClosedForm form, Vector flange, Rotation turned, Posture posture, double[] near) {
        Vector wrist = form.wrist(flange, turned);
        ClosedForm.Reach reach = form.reach(wrist, posture);
        if (Tolerance.isOutside(reach.aside() - reach.toAxis())) {
            String why = "would bring the wrist within " + ShownNumber.down(reach.toAxis(), 1)
                    + " mm of axis 1; the shoulder keeps it " + ShownNumber.up(reach.aside(), 1) + " mm away";
            return new Result(null, why);
        }
        if (Tolerance.isOutside(reach.fromShoulder() - reach.farthest())
                || Tolerance.isOutside(reach.nearest() - reach.fromShoulder())) {
            boolean far = reach.fromShoulder() > reach.farthest();
            String why = "would put the wrist "
                    + (far ? ShownNumber.up(reach.fromShoulder(), 1) : ShownNumber.down(reach.fromShoulder(), 1))
                    + " mm from the shoulder; it gets from " + ShownNumber.up(reach.nearest(), 1) + " to "
                    + ShownNumber.down(reach.farthest(), 1) + " mm";
            return new Result(null, why);
        }
        return new Result(form.solve(wrist, turned, posture, near), "");
    }

    private Result stepByStep(Vector flange, Rotation turned, Posture posture, double[] near) {
        if (Tolerance.isOutside(flange.length() - farthest)) {
            return new Result(
                    null,
                    "would put the flange " + ShownNumber.up(flange.length(), 1)
                            + " mm from the foot of axis 1; its links" + " together are "
                            + ShownNumber.down(farthest, 1) + " mm long");
        }
        double[] found = fromLikelyGuesses(flange, turned, posture, near);
        for (int i = 1; i <= GUESSES && found == null; i++) {
            found = from(guess(i), flange, turned, posture);
        }
        String why = "was not reached with " + posture.words() + " from " + GUESSES
                + " first guesses (this arm has no closed form; a solution counts when it is true to 0.0000001 mm)";
        return new Result(found, found == null ? why : "");
    }

    /** From where the axes stood, and from what the closed form of a like arm says. */
    private double @Nullable [] fromLikelyGuesses(Vector flange, Rotation turned, Posture posture, double[] near) {
        double[] found = from(near, flange, turned, posture);
        if (likeness == null || found != null) {
            return found;
        }
        Vector wrist = likeness.wrist(flange, turned);
        found = from(likeness.solve(wrist, turned, posture, near), flange, turned, posture);
        for (int i = 0; i < Posture.ALL.size() && found == null; i++) {
            found = from(likeness.solve(wrist, turned, Posture.ALL.get(i), near), flange, turned, posture);
        }
        return found;
    }

    private double @Nullable [] from(double[] guess, Vector flange, Rotation turned, Posture posture) {
        double[] found = newton.solve(flange, turned, guess);
        return found != null && isOf(posture, found) ? found : null;
    }

    private boolean isOf(Posture posture, double[] axes) {
        Stance stance = Stance.of(rows, AxisValues.of(axes));
        return stance.agreed(stance.posture(), posture) != null;
    }

    private static double[] guess(int index) {
        double[] guess = new double[6];
        for (int i = 0; i < 6; i++) {
            double part = 0;
            double weight = 1;
            for (int rest = index; rest > 0; rest /= PRIMES[i]) {
                weight /= PRIMES[i];
                part += weight * (rest % PRIMES[i]);
            }
            guess[i] = 360 * part - 180;
        }
        return guess;
    }

    /** All postures in which a place can be reached, each with its axis values; alike ones once. */
    List<AxisValues> all(ToolPose target, Vector offset) {
        List<AxisValues> all = new ArrayList<>();
        for (Posture posture : Posture.ALL) {
            double[] axes = solve(target, posture, offset, null).axes();
            if (axes != null && all.stream().noneMatch(other -> isSame(other, axes))) {
                all.add(AxisValues.of(axes));
            }
        }
        return all;
    }

    private static boolean isSame(AxisValues a, double[] b) {
        for (int i = 0; i < b.length; i++) {
            if (Tolerance.isOutside(Math.abs(Math.IEEEremainder(a.get(i) - b[i], 360)))) {
                return false;
            }
        }
        return true;
    }
}
