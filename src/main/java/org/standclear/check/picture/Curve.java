package org.standclear.check.picture;

import java.util.ArrayList;
import java.util.List;

/** A value over time as a line; of more places than the drawing has columns only the highest of each column is kept. */
final class Curve {

    private static final double COLUMN = 0.5;

    private final Scale time;
    private final Scale value;
    private final StringBuilder path = new StringBuilder();
    private List<Place> open = new ArrayList<>();

    Curve(Scale time, Scale value) {
        this.time = time;
        this.value = value;
    }

    /** Goes on to a value at a time, not earlier than the one before. */
    void to(double seconds, double height) {
        Place place = new Place(time.at(seconds), value.at(height));
        int count = open.size();
        if (count >= 2 && place.x() - open.get(count - 2).x() < COLUMN) {
            if (place.y() < open.get(count - 1).y()) {
                open.set(count - 1, place);
            }
            return;
        }
        open.add(place);
    }

    /** Lifts the pen: what follows is not joined to what came before. */
    void lift() {
        if (open.size() > 1) {
            path.append(PathText.line(open));
        }
        open = new ArrayList<>();
    }

    /** The line as path data; empty when nothing was drawn. */
    String path() {
        lift();
        return path.toString();
    }
}
