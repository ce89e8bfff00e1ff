package org.standclear.check.picture;

import java.util.ArrayList;
import java.util.List;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

/** The corners of path data, read back on their own: absolute M, L, H, V and Z, and circles of two arcs. */
final class DrawnPlaces {

    private static final Pattern PART = Pattern.compile("([MLHVZa])([^MLHVZa]*)");
    private static final Pattern NUMBER = Pattern.compile("-?\\d+(\\.\\d)?");

    private DrawnPlaces() {}

    static List<Place> of(String path) {
        List<Place> places = new ArrayList<>();
        double x = 0;
        double y = 0;
        Matcher parts = PART.matcher(path);
        int read = 0;
        while (parts.find()) {
            if (parts.start() != read) {
                throw new AssertionError("not path data: " + path);
            }
            read = parts.end();
            List<Double> numbers = numbers(parts.group(2));
            switch (parts.group(1)) {
                case "M", "L" -> {
                    x = numbers.get(0);
                    y = numbers.get(1);
                }
                case "H" -> x = numbers.get(0);
                case "V" -> y = numbers.get(0);
                case "a" -> {
                    places.add(new Place(x + numbers.get(5) / 2, y - numbers.get(0)));
                    places.add(new Place(x + numbers.get(5) / 2, y + numbers.get(0)));
                    x += numbers.get(5);
                    y += numbers.get(6);
                }
                default -> {}
            }
            places.add(new Place(x, y));
        }
        if (read != path.length()) {
            throw new AssertionError("not path data: " + path);
        }
        return places;
    }

    private static List<Double> numbers(String text) {
        List<Double> numbers = new ArrayList<>();
        for (String word : text.strip().split(" ")) {
            if (!word.isEmpty()) {
                if (!NUMBER.matcher(word).matches()) {
                    throw new AssertionError("not a number of a drawing: " + word);
                }
                numbers.add(Double.valueOf(word));
            }
        }
        return numbers;
    }
}
