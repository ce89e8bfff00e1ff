package org.standclear.check.picture;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.stream.Collectors;
import org.standclear.check.picture.Drawing.Word;
import org.standclear.check.picture.Samples.OfSpan;
import org.standclear.core.geometry.Vector;

/** Puts the numbers of the steps where their moves end; moves that end in one place share their words. */
final class StepNumbers {

    private static final int MOST_PLACES = 60;
    private static final int MOST_IN_ONE = 4;
    private static final double SAME = 4;
    private static final double LETTER = 8.2;
    private static final double HEIGHT = 15;

    /** Directions from the place to the middle of the words, tried in this order. */
    private static final double[][] AROUND = {
        {1, -1}, {-1, -1}, {1, 1}, {-1, 1}, {0, -1.4}, {0, 1.6}, {1.3, 0}, {-1.3, 0}, {2, -2}, {-2, -2}, {2, 2}, {-2, 2}
    };

    private final View view;
    private final int width;
    private final int height;
    private final List<double[]> taken = new ArrayList<>();

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
        ends.keySet().forEach(place -> taken.add(new double[] {place.x() - 3, place.y() - 3, 6, 6}));
        List<Word> words = new ArrayList<>();
        ends.forEach((place, numbers) -> put(words, place, text(numbers)));
        return words;
    }

    private static String text(List<String> numbers) {
        String text = numbers.stream().distinct().limit(MOST_IN_ONE).collect(Collectors.joining(", "));
        return numbers.stream().distinct().count() > MOST_IN_ONE ? text + " …" : text;
    }

    private void put(List<Word> words, Place place, String text) {
        double wide = text.length() * LETTER + 2;
        for (double[] way : AROUND) {
            double left = place.x() + way[0] * 7 + (way[0] > 0 ? 0 : way[0] < 0 ? -wide : -wide / 2);
            double top = place.y() + way[1] * 11 - HEIGHT / 2;
            double[] box = {left, top, wide, HEIGHT};
            if (isFree(box)) {
                taken.add(box);
                Place at = new Place(left + wide / 2, top + HEIGHT - 3);
                words.add(Word.at(at, "middle", "number", text));
                return;
            }
        }
    }

    private boolean isFree(double[] box) {
        boolean inside = box[0] >= 1 && box[1] >= 1 && box[0] + box[2] <= width - 1 && box[1] + box[3] <= height - 1;
        return inside && taken.stream().noneMatch(other -> overlap(box, other));
    }

    private static boolean overlap(double[] a, double[] b) {
        return a[0] < b[0] + b[2] && b[0] < a[0] + a[2] && a[1] < b[1] + b[3] && b[1] < a[1] + a[3];
    }
}
