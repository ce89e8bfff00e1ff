package org.standclear.core.arm.articulated;

import java.util.ArrayList;
import java.util.List;
import java.util.OptionalDouble;
import org.jspecify.annotations.Nullable;
import org.standclear.core.arm.AxisValues;
import org.standclear.core.arm.LineFollowing;
import org.standclear.core.geometry.Rotation;

/**
 * The axes along a straight line of an arm without a closed form: in small steps from where they stand, each ended by
 * Newton steps. Where even the smallest step finds no way on, or only by a jump, the line counts as leaving the reach.
 */
final class NumericLine implements LineFollowing {

    /** An axis goes no farther in one step, deg. */
    private static final double FARTHEST = 4;

    /** The foretold and the found value of an axis differ by no more, deg. */
    private static final double FORETOLD = 0.5;

    private static final double FINEST = 1e-12;

    /** A determinant below this part of what the arm's size makes of it has no sign. */
    private static final double NO_SIGN = 1e-12;

    private static final int MOST_STEPS = 20_000;

    /** So many steps lead to a place between two that were found, where no guess does. */
    private static final int CAREFUL_STEPS = 24;

    private final List<DhRow> rows;
    private final Newton newton;
    private final FlangeLine line;
    private final List<Place> places = new ArrayList<>();
    private final OptionalDouble leaves;
    private final double size;

    /** On which side of the singular places the line runs; 0 while it is on none. */
    private int side;

    private record Place(double mm, double[] axes) {}

    NumericLine(List<DhRow> rows, Newton newton, FlangeLine line, AxisValues from) {
        this.rows = rows;
        this.newton = newton;
        this.line = line;
        this.size = Math.max(1, rows.stream().mapToDouble(DhRow::length).sum());
        places.add(new Place(0, Inverse.values(from)));
        this.side = sideAt(Inverse.values(from));
        this.leaves = march();
    }

    private OptionalDouble march() {
        double step = line.length() / 64;
        for (int i = 0; i < MOST_STEPS; i++) {
            Place last = places.get(places.size() - 1);
            if (last.mm() >= line.length()) {
                return OptionalDouble.empty();
            }
            Place next = next(last, Math.min(line.length(), last.mm() + step));
            if (next != null) {
                places.add(next);
                step *= 2;
            } else {
                step /= 4;
                if (step < FINEST * line.length()) {
                    return OptionalDouble.of(last.mm());
                }
            }
        }
        return OptionalDouble.of(places.get(places.size() - 1).mm());
    }

    /** The next place; null when it lies too far to be sure that the way there is the arm's. */
    private @Nullable Place next(Place last, double mm) {
        double[] found = foretold(last, mm);
        if (found == null) {
            // where a singular place is left the rates foretell nothing
            found = solved(mm, last.axes());
            if (found == null || !isWithin(FORETOLD, found, last.axes())) {
                return null;
            }
        }
        int there = sideAt(found);
        if (there * side < 0) {
            // on the other side of a singular place without the turn that leads round it: another posture
            return null;
        }
        side = there == 0 ? side : there;
        return new Place(mm, found);
    }

    private double @Nullable [] foretold(Place last, double mm) {
        double[] rates = Inverse.values(line.rates(rows, last.axes(), last.mm()));
        double[] guess = last.axes().clone();
        for (int i = 0; i < guess.length; i++) {
            guess[i] += rates[i] * (mm - last.mm());
        }
        if (!isWithin(FARTHEST, guess, last.axes())) {
            return null;
        }
        double[] found = solved(mm, guess);
        return found != null && isWithin(FORETOLD, found, guess) ? found : null;
    }

    private static boolean isWithin(double degrees, double[] a, double[] b) {
        for (int i = 0; i < a.length; i++) {
            if (!(Math.abs(a[i] - b[i]) <= degrees)) {
                return false;
            }
        }
        return true;
    }

    private int sideAt(double[] axes) {
        LinkFrames frames = new LinkFrames(rows, AxisValues.of(axes));
        double determinant = LinearSystem.determinant(frames.jacobian(frames.flange()));
        return Math.abs(determinant) <= NO_SIGN * size * size * size ? 0 : (int) Math.signum(determinant);
    }

    private double @Nullable [] solved(double mm, double[] guess) {
        Rotation turned = line.turned(mm);
        return newton.solve(line.flange(mm, turned), turned, guess);
    }

    @Override
    public OptionalDouble leavesReach() {
        return leaves;
    }

    private double[] there(double mm) {
        int low = 0;
        int high = places.size() - 1;
        while (low < high) {
            int middle = (low + high + 1) / 2;
            if (places.get(middle).mm() <= mm) {
                low = middle;
            } else {
                high = middle - 1;
            }
        }
        Place before = places.get(low);
        return low + 1 < places.size() ? betweenPlaces(before, places.get(low + 1), mm) : before.axes();
    }

    /** Between two places that were found; a solution that is not theirs is none, and without one it goes there step by step. */
    private double[] betweenPlaces(Place before, Place after, double mm) {
        double[] guess = between(before, after, mm);
        for (double[] from : List.of(guess, before.axes(), after.axes())) {
            double[] found = solved(mm, from);
            if (found != null && isOfTheSameWay(found, before)) {
                return found;
            }
        }
        double[] at = before.axes();
        for (int i = 1; i <= CAREFUL_STEPS; i++) {
            // beside a singular place the axes go with the root of the way, so the first steps are the shortest
            double part = (double) i * i / (CAREFUL_STEPS * CAREFUL_STEPS);
            double[] found = solved(before.mm() + (mm - before.mm()) * part, at);
            if (found == null || !isOfTheSameWay(found, before)) {
                return guess;
            }
            at = found;
        }
        return at;
    }

    private boolean isOfTheSameWay(double[] found, Place beside) {
        return isWithin(2 * FARTHEST, found, beside.axes()) && sideAt(found) * side >= 0;
    }

    private static double[] between(Place before, Place after, double mm) {
        double part = (mm - before.mm()) / (after.mm() - before.mm());
        double[] guess = before.axes().clone();
        for (int i = 0; i < guess.length; i++) {
            guess[i] += (after.axes()[i] - guess[i]) * part;
        }
        return guess;
    }

    @Override
    public AxisValues at(double mm, AxisValues near) {
        return AxisValues.of(there(mm));
    }

    @Override
    public AxisValues ratesPerMm(double mm) {
        return line.rates(rows, there(mm), mm);
    }
}
