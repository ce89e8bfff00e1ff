package org.standclear.check.picture;

import java.util.ArrayList;
import java.util.List;

/** The parts of a circle around axis 1 that lie on a view; what would run over its edge is cut there. */
final class RingArcs {

    private static final int PARTS = 1440;

    private RingArcs() {}

    /** Each part as its places, in their order. */
    static List<List<Place>> of(View view, double mm) {
        double width = view.across().start() + view.across().end();
        Place foot = view.at(0, 0);
        double radius = view.length(mm);
        List<List<Place>> arcs = new ArrayList<>();
        List<Place> open = new ArrayList<>();
        for (int i = 0; i <= PARTS; i++) {
            // begun at the bottom, where a ring is cut most often
            double turn = 2 * Math.PI * i / PARTS + Math.PI / 2;
            Place place = new Place(foot.x() + radius * Math.cos(turn), foot.y() + radius * Math.sin(turn));
            if (place.x() >= 0 && place.x() <= width && place.y() >= 0 && place.y() <= view.height()) {
                open.add(place);
            } else {
                close(open, arcs);
                open = new ArrayList<>();
            }
        }
        close(open, arcs);
        return arcs;
    }

    private static void close(List<Place> open, List<List<Place>> arcs) {
        if (open.size() > 1) {
            arcs.add(open);
        }
    }
}
