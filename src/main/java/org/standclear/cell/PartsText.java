package org.standclear.cell;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.jspecify.annotations.Nullable;
import org.standclear.cell.PartChanges.Footprint;
import org.standclear.core.quantity.ShownNumber;

/**
 * Writes which parts and fixtures are at a cell into its file's text. A part stands in the file's list with its mass and in a
 * remark, and widens the fitted tool's overhang to as far as the part reaches; a fixture is a keep-out box as high as it is. What comes out is read by the
 * ordinary reader before anybody uses it.
 */
final class PartsText {

    private static final Pattern VERSION = Pattern.compile("(?m)^version:\\s*\\d+\\s*$");
    private static final Pattern FITTED = Pattern.compile("(?m)^fitted-tool:\\s*(\\S+)\\s*$");
    private static final Pattern PART = Pattern.compile("(?m)^# part (\\S+): ([0-9.]+) kg, reaches ([0-9.]+) mm\\R");
    private static final Pattern PARTS = Pattern.compile("(?m)^parts:[ ]*\\R");
    private static final Pattern ALONE = Pattern.compile("(?m)^# tool alone: overhang ([0-9.]+) mm\\R");
    private static final Pattern KEEP_OUT = Pattern.compile("(?m)^  keep-out:\\s*\\R");
    private static final Pattern LIMITS = Pattern.compile("(?m)^limits:\\s*\\R");
    private static final Pattern OVERHANG = Pattern.compile("overhang-mm: ([0-9.]+)");

    private PartsText() {}

    /** The codes of parts and fixtures that the text names, in its order. */
    static List<String> codes(String file) {
        List<String> codes = new ArrayList<>();
        PART.matcher(file).results().forEach(found -> codes.add(found.group(1)));
        Pattern.compile("(?m)^    - \\{name: fixture (\\S+), ")
                .matcher(file)
                .results()
                .forEach(found -> codes.add(found.group(1)));
        return List.copyOf(codes);
    }

    /** The next version's text with the part there, or as it is now; empty when the text is of another form. */
    static Optional<String> withPart(String file, int version, Equipment.Item part) {
        Matcher fitted = FITTED.matcher(without(file, part));
        if (!fitted.find() || part.overhangMm() == null) {
            return Optional.empty();
        }
        String line = "# part " + part.code() + ": " + ShownNumber.plain(part.massKg()) + " kg, reaches "
                + ShownNumber.plain(part.overhangMm()) + " mm\n";
        StringBuilder text = new StringBuilder(without(file, part));
        text.insert(fitted.start(), line);
        return numbered(listed(text.toString(), part), version).map(PartsText::widened);
    }

    private static String listed(String file, Equipment.Item part) {
        String item = "  - {name: " + part.code() + ", mass-kg: " + ShownNumber.plain(part.massKg()) + "}\n";
        Matcher parts = PARTS.matcher(file);
        if (parts.find()) {
            return file.substring(0, parts.end()) + item + file.substring(parts.end());
        }
        Matcher fitted = FITTED.matcher(file);
        return fitted.find()
                ? file.substring(0, fitted.start()) + "parts:\n" + item + file.substring(fitted.start())
                : file;
    }

    /** The next version's text with the fixture standing there; where it stood when no place is given. */
    static Optional<String> withFixture(String file, int version, Equipment.Item fixture, @Nullable Footprint where) {
        Footprint place = where == null ? placeOf(file, fixture).orElse(null) : where;
        if (place == null || fixture.overhangMm() == null) {
            return Optional.empty();
        }
        String box = "    - {name: fixture " + fixture.code() + ", x: " + range(place.xFrom(), place.xTo()) + ", y: "
                + range(place.yFrom(), place.yTo()) + ", z: " + range(0, fixture.overhangMm()) + "}\n";
        String text = without(file, fixture);
        Matcher boxes = KEEP_OUT.matcher(text);
        if (boxes.find()) {
            return numbered(text.substring(0, boxes.end()) + box + text.substring(boxes.end()), version);
        }
        Matcher limits = LIMITS.matcher(text);
        return limits.find()
                ? numbered(
                        text.substring(0, limits.end()) + "  keep-out:\n" + box + text.substring(limits.end()), version)
                : Optional.empty();
    }

    /** The next version's text without the part or fixture. */
    static Optional<String> taken(String file, int version, Equipment.Item item) {
        return numbered(without(file, item), version).map(PartsText::widened);
    }

    /** The fitted tool's overhang as wide as the farthest of tool and parts; as it was without parts. */
    static String widened(String file) {
        Matcher fitted = FITTED.matcher(file);
        if (!fitted.find()) {
            return file;
        }
        Matcher tool = Pattern.compile("(?m)^  - \\{code: " + Pattern.quote(fitted.group(1)) + ",[^\\n]*}[ ]*$")
                .matcher(file);
        if (!tool.find()) {
            return file;
        }
        Matcher overhang = OVERHANG.matcher(tool.group());
        Matcher alone = ALONE.matcher(file);
        double own = alone.find() ? number(alone.group(1)) : overhang.find() ? number(overhang.group(1)) : 0;
        double farthest = own;
        List<Double> parts =
                PART.matcher(file).results().map(one -> number(one.group(3))).toList();
        for (double reach : parts) {
            farthest = Math.max(farthest, reach);
        }
        String line = OVERHANG.matcher(tool.group()).replaceFirst("overhang-mm: " + ShownNumber.plain(farthest));
        String text = ALONE.matcher(file.substring(0, tool.start()) + line + file.substring(tool.end()))
                .replaceAll("");
        if (parts.isEmpty()) {
            return text;
        }
        Matcher before = FITTED.matcher(text);
        StringBuilder noted = new StringBuilder(text);
        if (before.find()) {
            noted.insert(before.start(), "# tool alone: overhang " + ShownNumber.plain(own) + " mm\n");
        }
        return noted.toString();
    }

    /** What another tool was fitted for says nothing about this one. */
    static String forgetToolAlone(String file) {
        return ALONE.matcher(file).replaceAll("");
    }

    private static String without(String file, Equipment.Item item) {
        String code = Pattern.quote(item.code());
        return item.kind() == Equipment.Kind.PART
                ? withoutEmptyParts(file.replaceAll("(?m)^# part " + code + ": .*\\R", "")
                        .replaceAll("(?m)^  - \\{name: " + code + ", mass-kg: [^\\n]*}[ ]*\\R", ""))
                : withoutEmptyList(file.replaceAll("(?m)^    - \\{name: fixture " + code + ", [^\\n]*}[ ]*\\R", ""));
    }

    private static String withoutEmptyParts(String file) {
        return file.replaceAll("(?m)^parts:[ ]*\\R(?!  - )", "");
    }

    private static String withoutEmptyList(String file) {
        return file.replaceAll("(?m)^  keep-out:\\s*\\R(?!    - )", "");
    }

    private static Optional<Footprint> placeOf(String file, Equipment.Item fixture) {
        Matcher found = Pattern.compile("(?m)^    - \\{name: fixture " + Pattern.quote(fixture.code())
                        + ", x: \\[([-0-9.]+), ([-0-9.]+)], y: \\[([-0-9.]+), ([-0-9.]+)], ")
                .matcher(file);
        return found.find()
                ? Optional.of(new Footprint(
                        number(found.group(1)), number(found.group(2)), number(found.group(3)), number(found.group(4))))
                : Optional.empty();
    }

    private static Optional<String> numbered(String file, int version) {
        Matcher number = VERSION.matcher(file);
        return number.find() ? Optional.of(number.replaceFirst("version: " + version)) : Optional.empty();
    }

    private static String range(double from, double to) {
        return "[" + ShownNumber.plain(from) + ", " + ShownNumber.plain(to) + "]";
    }

    private static double number(String digits) {
        return Double.parseDouble(digits);
    }
}
