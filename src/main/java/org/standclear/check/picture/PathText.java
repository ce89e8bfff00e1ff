package org.standclear.check.picture;

import java.math.BigDecimal;
import java.math.RoundingMode;
import java.util.ArrayList;
import java.util.BitSet;
import java.util.List;

/** Writes lines as SVG path data, with no more corners than can be seen. */
final class PathText {

    /** A corner nearer than this to the line without it cannot be seen. */
    private static final double SEEN = 0.15;

    private PathText() {}

    /** One line through the places. */
    static String line(List<Place> places) {
        StringBuilder text = new StringBuilder();
        char verb = 'M';
        for (Place place : simplified(places)) {
            text.append(verb).append(number(place.x())).append(' ').append(number(place.y()));
            verb = 'L';
        }
        return text.toString();
    }

    /** A closed box between two corners. */
    static String box(Place a, Place b) {
        String left = number(Math.min(a.x(), b.x()));
        String top = number(Math.min(a.y(), b.y()));
        return "M" + left + " " + top + "H" + number(Math.max(a.x(), b.x())) + "V" + number(Math.max(a.y(), b.y()))
                + "H" + left + "Z";
    }

    /** A circle. */
    static String circle(Place centre, double radius) {
        String r = number(radius);
        String across = number(2 * radius);
        return "M" + number(centre.x() - radius) + " " + number(centre.y()) + "a" + r + " " + r + " 0 1 0 " + across
                + " 0a" + r + " " + r + " 0 1 0 -" + across + " 0Z";
    }

    /** Slanted lines that fill a box. */
    static String hatch(Place a, Place b, double apart) {
        double left = Math.min(a.x(), b.x());
        double right = Math.max(a.x(), b.x());
        double top = Math.min(a.y(), b.y());
        double bottom = Math.max(a.y(), b.y());
        StringBuilder text = new StringBuilder();
        for (double sum = Math.ceil((left + top) / apart) * apart; sum < right + bottom; sum += apart) {
            double fromX = Math.max(left, sum - bottom);
            double toX = Math.min(right, sum - top);
            if (toX > fromX) {
                text.append(line(List.of(new Place(fromX, sum - fromX), new Place(toX, sum - toX))));
            }
        }
        return text.toString();
    }

    /** A number with one decimal at most; what is no number is refused. */
    static String number(double value) {
        if (!Double.isFinite(value)) {
            throw new IllegalArgumentException("a drawing has no " + value);
        }
        BigDecimal rounded =
                BigDecimal.valueOf(value).setScale(1, RoundingMode.HALF_UP).stripTrailingZeros();
        return rounded.signum() == 0 ? "0" : rounded.toPlainString();
    }

    /** The places without those that lie on the line of their neighbours (Douglas and Peucker, 1973). */
    static List<Place> simplified(List<Place> places) {
        if (places.size() < 3) {
            return places;
        }
        BitSet kept = new BitSet(places.size());
        kept.set(0);
        kept.set(places.size() - 1);
        List<int[]> open = new ArrayList<>();
        open.add(new int[] {0, places.size() - 1});
        while (!open.isEmpty()) {
            int[] part = open.remove(open.size() - 1);
            int farthest = farthest(places, part[0], part[1]);
            if (farthest > 0) {
                kept.set(farthest);
                open.add(new int[] {part[0], farthest});
                open.add(new int[] {farthest, part[1]});
            }
        }
        return kept.stream().mapToObj(places::get).toList();
    }

    private static int farthest(List<Place> places, int from, int to) {
        double most = SEEN;
        int found = 0;
        for (int i = from + 1; i < to; i++) {
            double away = away(places.get(i), places.get(from), places.get(to));
            if (away > most) {
                most = away;
                found = i;
            }
        }
        return found;
    }

    /** How far a place is from the stretch between two others. */
    private static double away(Place place, Place a, Place b) {
        double dx = b.x() - a.x();
        double dy = b.y() - a.y();
        double squared = dx * dx + dy * dy;
        if (squared == 0) {
            return place.distance(a);
        }
        double along = ((place.x() - a.x()) * dx + (place.y() - a.y()) * dy) / squared;
        double part = Math.max(0, Math.min(1, along));
        return place.distance(new Place(a.x() + dx * part, a.y() + dy * part));
    }
}
