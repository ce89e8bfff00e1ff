package org.standclear.check.picture;

import java.util.List;

/**
 * A drawing as a page shows it: every line is path data with a class for its look, every word has its place.
 *
 * @param key letters and hyphens that no other drawing of the page has
 * @param title what it shows
 * @param says the drawing in words, for those who cannot see it
 * @param back lines behind the steps: limits, rings, boxes
 * @param steps what belongs to one step each, so that it can be marked
 * @param words words on the drawing
 */
public record Drawing(
        String key,
        String title,
        String says,
        int width,
        int height,
        List<Line> back,
        List<StepLines> steps,
        List<Word> words) {

    public Drawing {
        back = List.copyOf(back);
        steps = List.copyOf(steps);
        words = List.copyOf(words);
    }

    /** Whether its lines lie over each other and are drawn thin; templates ask it. */
    public boolean isDense() {
        return steps.size() > WayLines.MOST_APART;
    }

    /** The part of the plane it shows. */
    public String viewBox() {
        return "0 0 " + width + " " + height;
    }

    /**
     * A line or an area.
     *
     * @param look its class in the style sheet
     * @param path SVG path data
     */
    public record Line(String look, String path) {}

    /**
     * The lines of one step.
     *
     * @param key of the step
     * @param says shown when one points at it
     */
    public record StepLines(String key, String says, List<Line> lines) {

        public StepLines {
            lines = List.copyOf(lines);
        }
    }

    /**
     * Words on the drawing.
     *
     * @param anchor start, middle or end
     */
    public record Word(String x, String y, String anchor, String look, String text) {

        static Word at(Place place, String anchor, String look, String text) {
            return new Word(PathText.number(place.x()), PathText.number(place.y()), anchor, look, text);
        }
    }
}
