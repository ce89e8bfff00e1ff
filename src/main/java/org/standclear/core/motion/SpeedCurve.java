package org.standclear.core.motion;

import java.util.Arrays;
import java.util.function.DoubleUnaryOperator;
import org.standclear.core.geometry.Search;

/**
 * How fast something goes along a path per unit of the path's own speed, and the greatest speed that it reaches under
 * a profile. The curve is sampled finely enough to see every hump; each hump is then searched to its top, so a peak is
 * not taken as sampled.
 */
final class SpeedCurve {

    private static final int ROUNDS = 24;
    private static final int BORDER_ROUNDS = 40;

    /** A hump whose samples stay below this part of the highest sample cannot rise above it. */
    private static final double WORTH_A_LOOK = 0.9;

    /** A sample as high as its neighbours but for this part of it stands on a plain, not on a hump. */
    private static final double FLAT = 1e-11;

    private final DoubleUnaryOperator rate;
    private final double[] places;
    private final double[] rates;

    /** A curve seen at those places, in rising order from the beginning of the path to its end. */
    SpeedCurve(DoubleUnaryOperator rate, double[] places) {
        this.rate = rate;
        this.places = places.clone();
        this.rates = Arrays.stream(places).map(rate).toArray();
    }

    /** A curve seen at even distances. */
    static SpeedCurve even(DoubleUnaryOperator rate, double length, int parts) {
        double[] places = new double[parts + 1];
        for (int i = 0; i <= parts; i++) {
            places[i] = length * i / parts;
        }
        return new SpeedCurve(rate, places);
    }

    /** The greatest speed under the profile. */
    double peak(Profile profile) {
        return peak(profile, 0);
    }

    /** The greatest speed under the profile of what goes faster than the curve by a fixed rate. */
    double peak(Profile profile, double more) {
        return new Samples(profile, more).peak();
    }

    /** The greatest cruise for which the speed stays at or below the ceiling, when it would not otherwise. */
    double cruiseHeldTo(double ceiling, Profile profile) {
        Samples samples = new Samples(profile, 0);
        double[] at = samples.withTops(ceiling);
        double fastest = 0;
        for (int i = 0; i < at.length; i++) {
            boolean over = samples.speed(at[i]) > ceiling;
            if (over) {
                fastest = Math.max(fastest, rate.applyAsDouble(at[i]));
            }
            if (i > 0 && over != samples.speed(at[i - 1]) > ceiling) {
                double border = Search.border(
                        place -> samples.speed(place) > ceiling,
                        over ? at[i] : at[i - 1],
                        over ? at[i - 1] : at[i],
                        BORDER_ROUNDS);
                fastest = Math.max(fastest, rate.applyAsDouble(border));
            }
        }
        return ceiling / fastest;
    }

    /** The speeds under one profile at the curve's places and at the ends of the ramps. */
    private final class Samples {

        private final Profile profile;
        private final double more;
        private final double[] at;
        private final double[] speeds;

        Samples(Profile profile, double more) {
            this.profile = profile;
            this.more = more;
            this.at = new double[places.length + 2];
            this.speeds = new double[places.length + 2];
            merge(profile.ramp(), profile.length() - profile.ramp());
        }

        private void merge(double rampUp, double rampDown) {
            int next = 0;
            double[] ends = {rampUp, rampDown, Double.POSITIVE_INFINITY};
            int end = 0;
            for (int i = 0; i < places.length; i++) {
                while (ends[end] < places[i]) {
                    next = put(next, ends[end], rate.applyAsDouble(ends[end]));
                    end++;
                }
                next = put(next, places[i], rates[i]);
            }
            while (next < at.length) {
                next = put(next, places[places.length - 1], rates[rates.length - 1]);
            }
        }

        private int put(int index, double place, double rateThere) {
            at[index] = place;
            speeds[index] = profile.speedAt(place) * (rateThere + more);
            return index + 1;
        }

        double speed(double place) {
            return profile.speedAt(place) * (rate.applyAsDouble(place) + more);
        }

        double peak() {
            double best = highest();
            double worth = best * WORTH_A_LOOK;
            for (int i = 0; i < at.length; i++) {
                if (isTop(i) && speeds[i] >= worth) {
                    best = Math.max(best, speed(top(i, this::speed)));
                }
            }
            return best;
        }

        private double highest() {
            return Arrays.stream(speeds).max().orElse(0);
        }

        private boolean isTop(int i) {
            return isTop(speeds, i);
        }

        private boolean isTop(double[] values, int i) {
            double before = i == 0 ? values[i] : values[i - 1];
            double after = i == values.length - 1 ? values[i] : values[i + 1];
            return values[i] >= before
                    && values[i] >= after
                    && values[i] - Math.min(before, after) > FLAT * Math.abs(values[i]);
        }

        private double top(int i, DoubleUnaryOperator f) {
            return Search.greatest(f, at[Math.max(0, i - 1)], at[Math.min(at.length - 1, i + 1)], ROUNDS);
        }

        /** The places with the tops of the speed and of the rate put between them. */
        double[] withTops(double ceiling) {
            double[] found = Arrays.copyOf(at, at.length + 2 * places.length);
            int count = at.length;
            double worth = ceiling * WORTH_A_LOOK;
            for (int i = 0; i < at.length; i++) {
                if (isTop(i) && speeds[i] >= worth) {
                    found[count++] = top(i, this::speed);
                }
            }
            for (int i = 0; i < places.length; i++) {
                if (isTop(rates, i) && count < found.length) {
                    double from = places[Math.max(0, i - 1)];
                    double to = places[Math.min(places.length - 1, i + 1)];
                    found[count++] = Search.greatest(rate, from, to, ROUNDS);
                }
            }
            double[] all = Arrays.copyOf(found, count);
            Arrays.sort(all);
            return all;
        }
    }
}
