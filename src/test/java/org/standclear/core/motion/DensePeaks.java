package org.standclear.core.motion;

import java.util.Arrays;
import java.util.function.DoubleFunction;
import java.util.function.DoubleUnaryOperator;
import java.util.stream.DoubleStream;

/**
 * The greatest speeds of a move by dense sampling, the dense samples taken again and again around the highest of them:
 * slow, plain, and independent of the code that it is held against.
 */
final class DensePeaks {

    private static final int INSTANTS = 150;
    private static final int CLOSER = 12;
    private static final int ROUNDS = 24;

    /** Humps whose highest sample stays below this part of the highest one are left alone. */
    private static final double WORTH_A_LOOK = 0.9;

    private static final double GOLDEN = (Math.sqrt(5) - 1) / 2;

    private final DoubleFunction<double[]> rates;
    private final double length;
    private final double acceleration;
    private final double[] places;
    private final double[][] sampled;

    /**
     * Speeds at a pace of 1 as a function of the place, seen at some places and at even instants of the fastest profile.
     */
    DensePeaks(DoubleFunction<double[]> rates, double[] places, double length, double cruise, double acceleration) {
        this.rates = rates;
        this.length = length;
        this.acceleration = acceleration;
        double ramp = Math.min(length / 2, cruise * cruise / (2 * acceleration));
        DoubleStream instants = DoubleStream.iterate(1, i -> i + 1)
                .limit(INSTANTS)
                .map(i -> ramp * i * i / INSTANTS / INSTANTS)
                .flatMap(place -> DoubleStream.of(place, length - place));
        this.places = DoubleStream.concat(Arrays.stream(places), instants)
                .sorted()
                .distinct()
                .toArray();
        this.sampled = new double[this.places.length][];
        for (int i = 0; i < sampled.length; i++) {
            sampled[i] = rates.apply(this.places[i]);
        }
    }

    /** The pace of the trapezoid at a place: as fast as either ramp lets it, and no faster than the cruise. */
    private double pace(double place, double cruise) {
        double nearer = Math.max(0, Math.min(place, length - place));
        return Math.min(cruise, Math.sqrt(2 * acceleration * nearer));
    }

    /** The greatest of one of the speeds. */
    double peak(int which, double cruise) {
        double[] speeds = new double[places.length];
        for (int i = 0; i < speeds.length; i++) {
            speeds[i] = sampled[i][which] * pace(places[i], cruise);
        }
        return greatest(speeds, place -> rates.apply(place)[which] * pace(place, cruise));
    }

    private double greatest(double[] speeds, DoubleUnaryOperator speed) {
        double best = Arrays.stream(speeds).max().orElseThrow();
        double worth = WORTH_A_LOOK * best;
        for (int i = 0; i < speeds.length; i++) {
            double before = i == 0 ? 0 : speeds[i - 1];
            double after = i == speeds.length - 1 ? 0 : speeds[i + 1];
            if (speeds[i] >= worth && speeds[i] >= before && speeds[i] >= after) {
                double from = places[Math.max(0, i - 1)];
                double to = places[Math.min(places.length - 1, i + 1)];
                best = Math.max(best, closer(speed, from, to));
            }
        }
        return best;
    }

    private static double closer(DoubleUnaryOperator speed, double from, double to) {
        double width = (to - from) / CLOSER;
        double best = 0;
        double at = from;
        for (int i = 0; i <= CLOSER; i++) {
            double there = speed.applyAsDouble(from + i * width);
            if (there > best) {
                best = there;
                at = from + i * width;
            }
        }
        return Math.max(best, narrowed(speed, Math.max(from, at - width), Math.min(to, at + width)));
    }

    private static double narrowed(DoubleUnaryOperator speed, double from, double to) {
        double a = from;
        double b = to;
        double left = b - GOLDEN * (b - a);
        double right = a + GOLDEN * (b - a);
        double atLeft = speed.applyAsDouble(left);
        double atRight = speed.applyAsDouble(right);
        double best = Math.max(atLeft, atRight);
        for (int round = 0; round < ROUNDS; round++) {
            if (atLeft > atRight) {
                b = right;
                right = left;
                atRight = atLeft;
                left = b - GOLDEN * (b - a);
                atLeft = speed.applyAsDouble(left);
            } else {
                a = left;
                left = right;
                atLeft = atRight;
                right = a + GOLDEN * (b - a);
                atRight = speed.applyAsDouble(right);
            }
            best = Math.max(best, Math.max(atLeft, atRight));
        }
        return best;
    }

    /**
     * The greatest cruise under which a speed stays at or below a ceiling: no place may be faster than the ceiling at
     * that cruise unless the ramps keep it below. Found by halving; the peak never falls while the cruise grows.
     */
    double cruiseHeldTo(int which, double ceiling, double cruise) {
        double low = 0;
        double high = cruise;
        for (int round = 0; round < 26; round++) {
            double middle = (low + high) / 2;
            if (peak(which, middle) <= ceiling) {
                low = middle;
            } else {
                high = middle;
            }
        }
        return low;
    }
}
