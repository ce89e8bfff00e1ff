package org.standclear.core.difference;

import java.util.ArrayList;
import java.util.List;
import java.util.Objects;
import org.standclear.core.geometry.Angles;
import org.standclear.core.geometry.Vector;
import org.standclear.core.program.Point;
import org.standclear.core.quantity.ShownNumber;
import org.standclear.core.quantity.Tolerance;

/** Where points are and how they moved, in words. */
final class PointWords {

    /** A change of distance below this is not worth a word, mm. */
    private static final double WORTH_SAYING = 0.05;

    private PointWords() {}

    static String place(Point point) {
        if (point.given() == null) {
            return "axes " + point.axes();
        }
        Vector at = point.pose().place();
        return "x " + ShownNumber.plain(at.x()) + ", y " + ShownNumber.plain(at.y()) + ", z "
                + ShownNumber.plain(at.z()) + " mm";
    }

    /** Whether the reader called it after its line, since the file gives the place where it is used. */
    static boolean isUnnamed(Point point) {
        return point.name().equals("line " + point.line());
    }

    /** Its name, or else its place. */
    static String name(Point point) {
        return isUnnamed(point) ? place(point) : point.name();
    }

    static boolean isSamePlace(Point a, Point b) {
        return key(a).equals(key(b));
    }

    /** Equal for points that mean the same place, whatever they are called. */
    static List<String> key(Point point) {
        return List.of(String.valueOf(point.given()), String.valueOf(point.branch()), String.valueOf(point.axes()));
    }

    /** "moved 12 mm up", "moved 5 mm along +x and 3 mm down, 4.1 mm farther from axis 1, turned 15 deg ...". */
    static String way(Point before, Point after) {
        if (before.given() == null || after.given() == null) {
            return "is at " + place(after) + ", before at " + place(before);
        }
        List<String> parts = new ArrayList<>();
        moved(before.pose().place(), after.pose().place(), parts);
        double turn = Angles.wrapped(after.pose().yaw() - before.pose().yaw());
        if (Math.abs(turn) > Tolerance.LENGTH) {
            parts.add("turned " + size(turn) + " deg " + (turn > 0 ? "counter-clockwise" : "clockwise")
                    + " seen from above");
        } else if (after.pose().yaw() != before.pose().yaw()) {
            parts.add("turn written as " + ShownNumber.plain(after.pose().yaw()) + " deg instead of "
                    + ShownNumber.plain(before.pose().yaw()));
        }
        if (!Objects.equals(before.branch(), after.branch())) {
            parts.add(side(after) + " instead of " + side(before));
        }
        return parts.isEmpty() ? "turned otherwise" : String.join(", ", parts);
    }

    private static void moved(Vector from, Vector to, List<String> parts) {
        List<String> ways = new ArrayList<>();
        along(to.x() - from.x(), "along +x", "along -x", ways);
        along(to.y() - from.y(), "along +y", "along -y", ways);
        along(to.z() - from.z(), "up", "down", ways);
        if (!ways.isEmpty()) {
            parts.add("moved " + String.join(" and ", ways));
        }
        double away = to.horizontal() - from.horizontal();
        if (Math.abs(away) >= WORTH_SAYING) {
            parts.add(size(away) + " mm " + (away > 0 ? "farther from" : "nearer to") + " axis 1");
        }
    }

    private static void along(double mm, String forth, String back, List<String> ways) {
        if (Math.abs(mm) > Tolerance.LENGTH) {
            ways.add(size(mm) + " mm " + (mm > 0 ? forth : back));
        }
    }

    /** To a tenth, or as exactly as needed to be more than nothing. */
    private static String size(double value) {
        double size = Math.abs(value);
        double shown = Math.round(size * 10) / 10.0;
        return ShownNumber.plain(shown > 0 ? shown : Math.round(size * 1e6) / 1e6);
    }

    private static String side(Point point) {
        return point.branch() == null ? "no side named" : point.branch().words();
    }
}
