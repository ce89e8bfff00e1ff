package org.standclear.core.geometry;

import java.util.function.DoublePredicate;
import java.util.function.DoubleUnaryOperator;

/** Finds extreme values and borders between two places of a path. */
public final class Search {

    private static final double GOLDEN = (Math.sqrt(5) - 1) / 2;

    private Search() {}

    /** Where a function that rises and then falls between the two places is greatest (golden section). */
    public static double greatest(DoubleUnaryOperator f, double from, double to, int rounds) {
        double a = from;
        double b = to;
        double c = b - GOLDEN * (b - a);
        double d = a + GOLDEN * (b - a);
        double fc = f.applyAsDouble(c);
        double fd = f.applyAsDouble(d);
        for (int i = 0; i < rounds; i++) {
            if (fc > fd) {
                b = d;
                d = c;
                fd = fc;
                c = b - GOLDEN * (b - a);
                fc = f.applyAsDouble(c);
            } else {
                a = c;
                c = d;
                fc = fd;
                d = a + GOLDEN * (b - a);
                fd = f.applyAsDouble(d);
            }
        }
        return fc > fd ? c : d;
    }

    /** The place where a condition that holds at the first place ceases to hold before the second. */
    public static double border(DoublePredicate holds, double inside, double outside, int rounds) {
        double in = inside;
        double out = outside;
        for (int i = 0; i < rounds; i++) {
            double middle = (in + out) / 2;
            if (holds.test(middle)) {
                in = middle;
            } else {
                out = middle;
            }
        }
        return in;
    }
}
