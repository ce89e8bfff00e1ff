package org.standclear.check.picture;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import org.standclear.check.picture.Drawing.Line;
import org.standclear.check.picture.Drawing.Word;
import org.standclear.core.cell.CellDescription;
import org.standclear.core.check.CheckAnswer;
import org.standclear.core.quantity.ShownNumber;

/**
 * Where people stand: the stand line, what arm, tool and part reach in this program, and how far people have to keep from
 * axis 1 at the held speed. The rings are far outside of what the plan shows, so that they stand below it on a map of
 * their own, on which the plan is a small box; what of them crosses the plan is drawn there too.
 */
final class Surroundings {

    /** How much higher the plan gets. */
    static final int HEIGHT = 216;

    private static final double MAP = 196;
    private static final double AIR = 1.06;
    private static final double TEXT = 262;
    private static final double ROW = 34;
    private static final double SAMPLE = 44;

    private final CellDescription cell;
    private final List<Ring> rings = new ArrayList<>();
    private final List<Line> lines = new ArrayList<>();
    private final List<Word> words = new ArrayList<>();

    Surroundings(CheckAnswer answer) {
        this.cell = answer.program().cell();
        double standLine = cell.limits().standLineMm();
        double farthest = answer.figures().farthestMm(cell);
        Double separation = answer.figures().separationMm();
        rings.add(new Ring("stand-line", standLine, "stand line " + ShownNumber.plain(standLine) + " mm"));
        if (separation != null) {
            double needed = farthest + separation;
            rings.add(new Ring("keep-away", needed, "people need " + ShownNumber.up(needed, 1) + " mm"));
        }
        rings.add(new Ring("covered", farthest, "the arm gets out to " + ShownNumber.up(farthest, 1) + " mm"));
    }

    /** A circle around axis 1. */
    private record Ring(String look, double mm, String words) {}

    /** The rings in words. */
    String says() {
        String middle = cell.arm().middle();
        return "Circles around " + middle + ": "
                + String.join("; ", rings.stream().map(Ring::words).toList()) + ".";
    }

    /** Draws the map below a plan, and the rings on the plan as far as they cross it. */
    Surroundings under(View plan, int width) {
        double top = plan.height() + 10.0;
        View map = map(top);
        lines.add(new Line("base", PathText.line(List.of(new Place(0, top - 6), new Place(width, top - 6)))));
        rings.stream()
                .sorted((a, b) -> Double.compare(b.mm(), a.mm()))
                .forEach(ring ->
                        lines.add(new Line(ring.look(), PathText.circle(map.at(0, 0), map.length(ring.mm())))));
        lines.add(new Line("foot", PathText.circle(map.at(0, 0), 3)));
        lines.add(new Line("shown-above", box(map, plan)));
        double row = top + ROW;
        for (Ring ring : rings) {
            key(ring.look(), ring.words(), ring.look() + "-word", row);
            row += ROW;
        }
        key("shown-above", "what the drawing above shows", "quiet", row);
        rings.stream().filter(ring -> !ring.look().equals("covered")).forEach(ring -> crossing(plan, ring));
        return this;
    }

    private View map(double top) {
        double most = rings.stream().mapToDouble(Ring::mm).max().orElse(1);
        double end = Math.max(most, 1) * AIR;
        return new View(View.Axes.X_AND_Y, new Scale(-end, end, 4, 4 + MAP), new Scale(-end, end, top + MAP, top));
    }

    private static String box(View map, View plan) {
        return PathText.box(
                map.at(plan.across().least(), plan.up().least()),
                map.at(plan.across().most(), plan.up().most()));
    }

    private void key(String look, String text, String textLook, double y) {
        lines.add(new Line(look, PathText.line(List.of(new Place(TEXT - SAMPLE, y), new Place(TEXT - 8, y)))));
        words.add(Word.at(new Place(TEXT, y + 5), "start", textLook, text));
    }

    /** The part of a ring that runs over the plan, with its words at its highest place. */
    private void crossing(View plan, Ring ring) {
        List<List<Place>> arcs = RingArcs.of(plan, ring.mm());
        arcs.forEach(arc -> lines.add(new Line(ring.look() + "-arc", PathText.line(arc))));
        arcs.stream()
                .flatMap(List::stream)
                .min(Comparator.comparingDouble(Place::y))
                .ifPresent(top -> words.add(Word.at(
                        new Place(Math.max(70, Math.min(top.x(), Views.WIDTH - 70)), Math.max(16, top.y() - 5)),
                        "middle",
                        ring.look() + "-word",
                        ring.words())));
    }

    List<Line> lines() {
        return lines;
    }

    List<Word> words() {
        return words;
    }
}
