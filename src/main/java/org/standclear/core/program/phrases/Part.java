package org.standclear.core.program.phrases;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;

/** The named parts of phrases. */
public enum Part {
    POWER(Kind.WORD),
    PERCENT(Kind.NUMBER),
    SPEED(Kind.NUMBER),
    ACCELERATION(Kind.NUMBER),
    POINT(Kind.NAME),
    X(Kind.NUMBER),
    Y(Kind.NUMBER),
    Z(Kind.NUMBER),
    YAW(Kind.NUMBER),
    PITCH(Kind.NUMBER),
    ROLL(Kind.NUMBER),
    SHOULDER(Kind.WORD),
    ELBOW(Kind.WORD),
    WRIST(Kind.WORD),
    AXIS1(Kind.NUMBER),
    AXIS2(Kind.NUMBER),
    AXIS3(Kind.NUMBER),
    AXIS4(Kind.NUMBER),
    AXIS5(Kind.NUMBER),
    AXIS6(Kind.NUMBER),
    TIME(Kind.NUMBER),
    COUNT(Kind.WHOLE),
    SECTION(Kind.NAME),
    TEXT(Kind.REST),
    ACTION(Kind.REST),
    TITLE(Kind.REST);

    private static final Map<String, Double> LENGTHS = Map.of("mm", 1.0, "cm", 10.0, "m", 1000.0, "in", 25.4);
    private static final Map<String, Double> SPEEDS = Map.of(
            "mm/s",
            1.0,
            "cm/s",
            10.0,
            "m/s",
            1000.0,
            "mm/min",
            1 / 60.0,
            "m/min",
            1000 / 60.0,
            "in/s",
            25.4,
            "in/min",
            25.4 / 60);
    private static final Map<String, Double> TIMES = Map.of("s", 1.0, "ms", 0.001, "min", 60.0);

    /** Where the tool point is, and how an upright tool is turned. */
    static final List<Part> PLACE = List.of(X, Y, Z, YAW);

    /** What a place needs besides, and a side of the elbow, for one way of six axes to reach it. */
    static final List<Part> POSTURE = List.of(PITCH, ROLL, SHOULDER, WRIST);

    /** Six axis values, which are a point without any of these. */
    static final List<Part> AXES = List.of(AXIS1, AXIS2, AXIS3, AXIS4, AXIS5, AXIS6);

    private final Kind kind;

    /** What a part looks like when the pattern does not say it, as a regular expression. */
    private enum Kind {
        NUMBER("[-+]?(?:[0-9]+\\.?[0-9]*|\\.[0-9]+)"),
        WHOLE("[0-9]+"),
        NAME("[A-Za-z][A-Za-z0-9_-]*"),
        WORD("[A-Za-z][A-Za-z0-9_-]*"),
        REST(".*");

        private final String pattern;

        Kind(String pattern) {
            this.pattern = pattern;
        }
    }

    Part(Kind kind) {
        this.kind = kind;
    }

    /** As patterns write it. */
    public String word() {
        return name().toLowerCase(Locale.ROOT);
    }

    /** What stands for {@code {part}} in a pattern. */
    String group() {
        return "(?P<" + word() + ">" + kind.pattern + ")";
    }

    boolean isNumber() {
        return kind == Kind.NUMBER;
    }

    /** The name under which a phrase gives the unit of this part; empty when it needs none. */
    Optional<String> quantity() {
        return switch (this) {
            case X, Y, Z -> Optional.of("length");
            case SPEED -> Optional.of("speed");
            case TIME -> Optional.of("time");
            default -> Optional.empty();
        };
    }

    /** The unit in which pages show a number of this part; empty for what has none. */
    String shownUnit() {
        return switch (this) {
            case X, Y, Z -> "mm";
            case YAW, PITCH, ROLL, AXIS1, AXIS2, AXIS3, AXIS4, AXIS5, AXIS6 -> "deg";
            case SPEED -> "mm/s";
            case TIME -> "s";
            case PERCENT, ACCELERATION -> "%";
            default -> "";
        };
    }

    /** The units of a quantity in mm, mm/s or s. */
    static Map<String, Double> units(String quantity) {
        return switch (quantity) {
            case "length" -> LENGTHS;
            case "speed" -> SPEEDS;
            default -> TIMES;
        };
    }

    static Optional<Part> of(String word) {
        return Arrays.stream(values()).filter(part -> part.word().equals(word)).findFirst();
    }

    /** All parts by which a phrase can say where a point is. */
    static List<Part> somewhere(Part... more) {
        List<Part> parts = new ArrayList<>(PLACE);
        parts.addAll(POSTURE);
        parts.add(ELBOW);
        parts.addAll(AXES);
        parts.addAll(List.of(more));
        return List.copyOf(parts);
    }
}
