package org.standclear.core.motion;

import java.util.function.DoubleFunction;
import java.util.function.DoubleUnaryOperator;
import org.standclear.core.arm.Arm;
import org.standclear.core.arm.AxisValues;
import org.standclear.core.geometry.Search;

/** Finds how far the link ends of an arm come from axis 1 horizontally on a way. */
final class LinkEndRadius {

    private static final int ROUNDS = 30;

    private LinkEndRadius() {}

    /** The greatest of all link ends, looked for among even samples and then around the highest of them. */
    static double greatest(Arm arm, DoubleFunction<AxisValues> at, double length, int parts) {
        double greatest = 0;
        for (int end = 0; end < arm.linkEnds(); end++) {
            int one = end;
            greatest = Math.max(greatest, greatest(place -> arm.linkEndRadius(one, at.apply(place)), length, parts));
        }
        return greatest;
    }

    private static double greatest(DoubleUnaryOperator radius, double length, int parts) {
        double width = length / parts;
        int best = 0;
        double most = radius.applyAsDouble(0);
        for (int i = 1; i <= parts; i++) {
            double there = radius.applyAsDouble(width * i);
            if (there > most) {
                most = there;
                best = i;
            }
        }
        double from = Math.max(0, width * (best - 1));
        double to = Math.min(length, width * (best + 1));
        return Math.max(most, radius.applyAsDouble(Search.greatest(radius, from, to, ROUNDS)));
    }
}
