package org.standclear.core.limits;

import java.util.function.ToDoubleFunction;
import org.standclear.core.geometry.Search;
import org.standclear.core.geometry.Vector;
import org.standclear.core.motion.ToolPath;

/**
 * Finds the place of a path where a distance is greatest or least. The distances are to convex things and change by at
 * most 1 mm a mm, which bounds what can happen between two samples.
 */
public final class PathSearch {

    private static final int LINE_ROUNDS = 90;
    private static final int ROUNDS = 40;

    private final ToolPath path;

    /** A place and the value there. */
    public record Extreme(Vector place, double value) {}

    /** A search along a path. */
    public PathSearch(ToolPath path) {
        this.path = path;
    }

    /** Where a convex distance is greatest; along a straight line that is at one of its ends. */
    public Extreme greatest(ToDoubleFunction<Vector> distance) {
        if (path.isStraight()) {
            Extreme first = at(0, distance);
            Extreme last = at(path.length(), distance);
            return last.value() > first.value() ? last : first;
        }
        return searched(distance, Double.NEGATIVE_INFINITY);
    }

    /** Where a convex distance is least; places that cannot come below the worth are not looked at closely. */
    public Extreme least(ToDoubleFunction<Vector> distance, double worth) {
        Extreme found = path.isStraight()
                ? least(distance, 0, path.length())
                : searched(place -> -distance.applyAsDouble(place), -worth);
        return path.isStraight() ? found : new Extreme(found.place(), -found.value());
    }

    private Extreme at(double place, ToDoubleFunction<Vector> f) {
        Vector there = path.at(place);
        return new Extreme(there, f.applyAsDouble(there));
    }

    private Extreme least(ToDoubleFunction<Vector> distance, double from, double to) {
        double place = Search.greatest(p -> -distance.applyAsDouble(path.at(p)), from, to, LINE_ROUNDS);
        Extreme best = at(place, distance);
        for (double end : new double[] {from, to}) {
            Extreme there = at(end, distance);
            best = there.value() < best.value() ? there : best;
        }
        return best;
    }

    private Extreme searched(ToDoubleFunction<Vector> f, double worth) {
        int parts = path.parts();
        double width = path.length() / parts;
        double change = path.speedBound() * width;
        Extreme[] samples = new Extreme[parts + 1];
        Extreme best = at(0, f);
        for (int i = 0; i <= parts; i++) {
            samples[i] = at(width * i, f);
            best = samples[i].value() > best.value() ? samples[i] : best;
        }
        for (int i = 1; i <= parts; i++) {
            double atMost = (samples[i - 1].value() + samples[i].value() + change) / 2;
            if (atMost > Math.max(worth, best.value())) {
                best = better(f, best, width * (i - 1), width * i);
            }
        }
        return best;
    }

    /** Both halves are searched: the distance may have a hump in each. */
    private Extreme better(ToDoubleFunction<Vector> f, Extreme best, double from, double to) {
        double middle = (from + to) / 2;
        Extreme left = at(Search.greatest(p -> f.applyAsDouble(path.at(p)), from, middle, ROUNDS), f);
        Extreme right = at(Search.greatest(p -> f.applyAsDouble(path.at(p)), middle, to, ROUNDS), f);
        Extreme of = left.value() > right.value() ? left : right;
        return of.value() > best.value() ? of : best;
    }
}
