package org.standclear.core.program.blocks;

import static org.standclear.core.quantity.ShownNumber.plain;

import org.standclear.core.geometry.Vector;
import org.standclear.core.program.Step;
import org.standclear.core.text.BadInputException;

/**
 * Finds the centre of an arc. With I and J it lies that far from the beginning. With R the chord and the radius leave
 * two centres: R above 0 means the arc of at most half a turn, R below 0 the longer one (ISO 6983-1; worked out in NIST
 * IR 6556, The NIST RS274/NGC Interpreter, 3.5.3).
 */
record ArcCentre(Vector from, Vector to, boolean clockwise, int line) {

    /** Shorter chords, or radii, are none, mm. */
    private static final double NONE = 1e-6;

    Step.Round byOffsets(double i, double j) {
        double x = from.x() + i;
        double y = from.y() + j;
        double first = Math.hypot(i, j);
        double last = Math.hypot(to.x() - x, to.y() - y);
        if (!(first > NONE)) {
            throw new BadInputException(
                    line, "the arc has no radius; I and J say how far its centre is from its start");
        }
        if (!(Math.abs(first - last) <= Step.Round.ROUNDING_MM)) {
            throw new BadInputException(
                    line,
                    "the arc begins " + plain(rounded(first)) + " mm from its centre and ends " + plain(rounded(last))
                            + " mm from it; both have to be the same");
        }
        return new Step.Round(x, y, clockwise);
    }

    private static double rounded(double mm) {
        return Math.rint(mm * 1e4) / 1e4;
    }

    Step.Round byRadius(double r) {
        double dx = to.x() - from.x();
        double dy = to.y() - from.y();
        double chord = Math.hypot(dx, dy);
        if (!(chord > NONE)) {
            throw new BadInputException(line, "an arc with R has to end elsewhere; write a whole circle with I and J");
        }
        double radius = Math.abs(r);
        if (!(chord / 2 - radius <= Step.Round.ROUNDING_MM / 2)) {
            throw new BadInputException(
                    line,
                    "the radius " + plain(rounded(radius)) + " mm is too small for an end " + plain(rounded(chord))
                            + " mm away; it needs half of that at least");
        }
        double height = Math.sqrt(Math.max(0, radius * radius - chord * chord / 4));
        // the centre of a short arc that turns left lies on the left of its chord
        double left = (r > 0) == clockwise ? -height : height;
        return new Step.Round(
                (from.x() + to.x()) / 2 - dy / chord * left, (from.y() + to.y()) / 2 + dx / chord * left, clockwise);
    }
}
