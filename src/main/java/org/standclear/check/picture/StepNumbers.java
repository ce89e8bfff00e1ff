package org.standclear.check.picture;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.stream.Collectors;
import org.standclear.check.picture.Drawing.Word;
import org.standclear.check.picture.Samples.OfSpan;
import org.standclear.core.geometry.Vector;
import org.standclear.core.timeline.Moment;

/** Puts the numbers of the steps where their moves end; moves that end in one place share their words. */
final class StepNumbers {

    private static final int MOST_PLACES = 60;
    private static final int MOST_IN_ONE = 4;
    private static final double SAME = 4;
    /** As wide and high as letters are on a phone, where they are drawn larger for the same drawing. */
    private static final double LETTER = 10.5;

    private static final double HEIGHT = 19;

    /** Directions from the place to the middle of the words, tried in this order. */
    private static final double[][] AROUND = {
        {1, -1}, {-1, -1}, {1, 1}, {-1, 1}, {0, -1.4}, {0, 1.6}, {1.3, 0}, {-1.3, 0}, {2, -2}, {-2, -2}, {2, 2}, {-2, 2}
    };

    private final View view;
    private final int width;
    private final int height;
    private final List<double[]> taken = new ArrayList<>();
    private final List<Place> ways = new ArrayList<>();
    private boolean isDense;

    StepNumbers(View view, int width, int height) {
        this.view = view;
        this.width = width;
        this.height = height;
    }

    /** The words, where there is room for them. */
    List<Word> of(List<OfSpan> spans) {
        Map<Place, List<String>> ends = new LinkedHashMap<>();
        for (OfSpan span : spans) {
            Vector tool = span.span().step().isMove() ? span.last().tool() : null;
            if (tool != null && ends.size() < MOST_PLACES) {
                Place end = view.at(tool);
                Place known = ends.keySet().stream()
                        .filter(place -> place.distance(end) < SAME)
                        .findFirst()
                        .orElse(end);
                ends.computeIfAbsent(known, place -> new ArrayList<>())
                        .add(span.span().step().step() + (span.span().step().closing() ? "c" : ""));
            }
        }
        isDense = spans.size() > WayLines.MOST_APART;
        spans.stream()
                .filter(OfSpan::hasWay)
                .flatMap(span -> span.moments().stream())
                .map(Moment::tool)
                .filter(Objects::nonNull)
                .forEach(tool -> ways.add(view.at(tool)));
        ends.keySet().forEach(place -> taken.add(new double[] {place.x() - 3, place.y() - 3, 6, 6}));
        List<Word> words = new ArrayList<>();
        ends.forEach((place, numbers) -> put(words, place, text(numbers)));
        return words;
    }

    private static String text(List<String> numbers) {
        String text = numbers.stream().distinct().limit(MOST_IN_ONE).collect(Collectors.joining(", "));
        return numbers.stream().distinct().count() > MOST_IN_ONE ? text + " …" : text;
    }

    /** Where neither other words nor a way are; of a few steps else where no other words are. */
    private void put(List<Word> words, Place place, String text) {
        double wide = text.length() * LETTER + 2;
        for (boolean besideWays : isDense ? new boolean[] {true} : new boolean[] {true, false}) {
            for (double[] way : AROUND) {
                double left = place.x() + way[0] * 7 + (way[0] > 0 ? 0 : way[0] < 0 ? -wide : -wide / 2);
                double top = place.y() + way[1] * 12 - HEIGHT / 2;
                double[] box = {left, top, wide, HEIGHT};
                if (isFree(box) && (!besideWays || ways.stream().noneMatch(one -> isIn(box, one)))) {
                    taken.add(box);
                    words.add(word(box, way[0], text));
                    return;
                }
            }
        }
    }

    /** At the side of its box that lies at the place. */
    private static Word word(double[] box, double side, String text) {
        double y = box[1] + HEIGHT - 4;
        if (side == 0) {
            return Word.at(new Place(box[0] + box[2] / 2, y), "middle", "number", text);
        }
        return side > 0
                ? Word.at(new Place(box[0], y), "start", "number", text)
                : Word.at(new Place(box[0] + box[2], y), "end", "number", text);
    }

    private static boolean isIn(double[] box, Place place) {
        return place.x() > box[0] && place.x() < box[0] + box[2] && place.y() > box[1] && place.y() < box[1] + box[3];
    }

    private boolean isFree(double[] box) {
        boolean inside = box[0] >= 1 && box[1] >= 1 && box[0] + box[2] <= width - 1 && box[1] + box[3] <= height - 1;
        return inside && taken.stream().noneMatch(other -> overlap(box, other));
    }

    private static boolean overlap(double[] a, double[] b) {
        return a[0] < b[0] + b[2] && b[0] < a[0] + a[2] && a[1] < b[1] + b[3] && b[1] < a[1] + a[3];
    }
}
