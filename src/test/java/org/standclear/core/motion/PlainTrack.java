package org.standclear.core.motion;

import java.util.ArrayList;
import java.util.List;
import org.jspecify.annotations.Nullable;

/**
 * The axes along a straight line, found by going along it in steps so short that no axis turns by more than a degree,
 * each step ended by Newton's method. Near a singular place the steps are as short as the axes are fast.
 */
final class PlainTrack {

    /** An axis goes no farther in one step, deg or mm. */
    private static final double FARTHEST = 1;

    private static final double FEWEST = 300;
    private static final int MOST = 8_000;

    /** So many steps lead to a place between two that were found, where no guess does. */
    private static final int STEPS = 24;

    private static final double FINEST = 1e-12;

    /** The tool is where it should be but for this, mm. */
    private static final double THERE = 1e-9;

    /** Weighs turning against going: 1 rad counts as so many mm. */
    private static final double LEVER = 100;

    private final PlainChain chain;
    private final PlainLine line;
    private final List<Place> places = new ArrayList<>();

    /** The axis values after so many mm, their rates, and the determinant. */
    record Place(double mm, double[] q, double[] rates, double determinant) {}

    private PlainTrack(PlainChain chain, PlainLine line) {
        this.chain = chain;
        this.line = line;
    }

    /** From these axis values on; null where the line cannot be followed to its end. */
    static @Nullable PlainTrack along(PlainChain chain, PlainLine line, double[] from) {
        PlainTrack track = new PlainTrack(chain, line);
        double[] first = track.corrected(0, from);
        if (first == null) {
            return null;
        }
        track.places.add(new Place(0, first, track.rates(first), track.determinant(first)));
        return track.march() ? track : null;
    }

    private boolean march() {
        double shrink = 1;
        while (places.size() < MOST) {
            Place last = last();
            if (last.mm() >= line.length()) {
                return true;
            }
            double step = line.length() / FEWEST;
            for (double rate : last.rates()) {
                step = Math.min(step, FARTHEST / Math.abs(rate));
            }
            step = Math.min(step * shrink, line.length() - last.mm());
            if (!(step > FINEST * line.length()) && last.mm() + step < line.length()) {
                return false;
            }
            Place next = stepped(last, step);
            if (next == null) {
                shrink /= 2;
            } else {
                places.add(next);
                shrink = Math.min(1, shrink * 2);
            }
        }
        return false;
    }

    private @Nullable Place stepped(Place last, double step) {
        double[] half = plus(last.q(), last.rates(), step / 2);
        double[] foretold = plus(last.q(), rates(half), step);
        double mm = last.mm() + step >= line.length() ? line.length() : last.mm() + step;
        double[] found = corrected(mm, foretold);
        if (found == null) {
            return null;
        }
        for (int i = 0; i < found.length; i++) {
            if (!(Math.abs(found[i] - foretold[i]) < FARTHEST / 4)) {
                return null;
            }
        }
        double determinant = determinant(found);
        // past a singular place without turning there: that is another of the arm's ways to reach it
        return determinant * last.determinant() > 0 ? new Place(mm, found, rates(found), determinant) : null;
    }

    private double determinant(double[] q) {
        return PlainEquations.determinant(chain.at(q).jacobian(LEVER));
    }

    private static double[] plus(double[] q, double[] rates, double mm) {
        double[] sum = q.clone();
        for (int i = 0; i < sum.length; i++) {
            sum[i] += rates[i] * mm;
        }
        return sum;
    }

    private Place last() {
        return places.get(places.size() - 1);
    }

    /** The axis values that put the tool on the line after so many mm, by Newton's method. */
    private double @Nullable [] corrected(double mm, double[] guess) {
        double[] wantedPlace = line.placeAt(mm);
        double[] wanted = line.turnedAt(mm);
        double[] q = guess.clone();
        double before = Double.POSITIVE_INFINITY;
        double[] best = q;
        for (int round = 0; round < 12; round++) {
            PlainChain.At at = chain.at(q);
            double[] error = error(at, wantedPlace, wanted);
            double size = 0;
            for (double one : error) {
                size += one * one;
            }
            if (!(size < before)) {
                break;
            }
            before = size;
            best = q;
            q = plus(q, PlainEquations.solve(at.jacobian(LEVER), error), 1);
        }
        return before < THERE * THERE ? best : null;
    }

    private double[] error(PlainChain.At at, double[] wantedPlace, double[] wanted) {
        double[] error = new double[chain.axes()];
        for (int k = 0; k < 3; k++) {
            error[k] = wantedPlace[k] - at.place[k];
        }
        double[] t = at.turned;
        double[] back = {t[0], t[3], t[6], t[1], t[4], t[7], t[2], t[5], t[8]};
        double[] left = PlainLine.times(wanted, back);
        double[] turn = {(left[7] - left[5]) / 2, (left[2] - left[6]) / 2, (left[3] - left[1]) / 2};
        if (chain.axes() == 4) {
            error[3] = turn[2] * LEVER;
        } else {
            for (int k = 0; k < 3; k++) {
                error[3 + k] = turn[k] * LEVER;
            }
        }
        return error;
    }

    /** The rates of the axes where they stand, per mm. */
    double[] rates(double[] q) {
        return PlainEquations.solve(chain.at(q).jacobian(LEVER), line.twist(chain.axes(), LEVER));
    }

    /** The axis values after so many mm. */
    double[] at(double mm) {
        int low = 0;
        int high = places.size() - 1;
        while (high - low > 1) {
            int middle = (low + high) / 2;
            if (places.get(middle).mm() <= mm) {
                low = middle;
            } else {
                high = middle;
            }
        }
        Place before = places.get(low);
        Place after = places.get(high);
        if (mm == before.mm() || mm == after.mm()) {
            return mm == before.mm() ? before.q() : after.q();
        }
        return between(before, after, mm);
    }

    /** Guessed by the cubic through both places with their rates, corrected; by small steps where that fails. */
    private double[] between(Place low, Place high, double mm) {
        double width = high.mm() - low.mm();
        double t = (mm - low.mm()) / width;
        double[] before = low.rates();
        double[] after = high.rates();
        double[] guess = new double[before.length];
        for (int i = 0; i < guess.length; i++) {
            double change = high.q()[i] - low.q()[i];
            double bend = (1 - t) * (before[i] * width - change) + t * (change - after[i] * width);
            guess[i] = low.q()[i] + t * change + t * (1 - t) * bend;
        }
        double[] found = corrected(mm, guess);
        if (found != null
                && isNear(found, low.q())
                && isNear(found, high.q())
                && determinant(found) * low.determinant() > 0) {
            return found;
        }
        Place at = low;
        for (int i = 1; i <= STEPS; i++) {
            Place next = stepped(at, (mm - low.mm()) * i / STEPS + low.mm() - at.mm());
            if (next == null) {
                throw new IllegalStateException("no axis values between two that were found, at " + mm + " mm");
            }
            at = next;
        }
        return at.q();
    }

    private static boolean isNear(double[] a, double[] b) {
        for (int i = 0; i < a.length; i++) {
            if (!(Math.abs(a[i] - b[i]) < 2 * FARTHEST)) {
                return false;
            }
        }
        return true;
    }

    double[] places() {
        return places.stream().mapToDouble(Place::mm).toArray();
    }

    /** How near to a singular place it comes: the least determinant on it. */
    double nearest() {
        return places.stream()
                .mapToDouble(place -> Math.abs(place.determinant()))
                .min()
                .orElseThrow();
    }

    PlainLine line() {
        return line;
    }

    double[] first() {
        return places.get(0).q();
    }

    double[] end() {
        return last().q();
    }
}
