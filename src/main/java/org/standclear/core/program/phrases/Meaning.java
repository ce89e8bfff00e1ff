package org.standclear.core.program.phrases;

import java.util.Arrays;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;

/** What a phrase can mean, with the parts that it needs and may have. */
public enum Meaning {
    POWER("power", "power mode", List.of(Part.POWER), List.of()),
    OVERRIDE("override", "override", List.of(Part.PERCENT), List.of()),
    AXIS_SPEED("axis-speed", "axis speed from here on", List.of(Part.PERCENT), List.of()),
    STRAIGHT_SPEED("straight-speed", "speed of straight moves from here on", List.of(Part.SPEED), List.of()),
    ACCELERATION("acceleration", "acceleration from here on", List.of(Part.PERCENT), List.of()),
    POINT("point", "defines a point", List.of(Part.POINT, Part.X, Part.Y, Part.Z, Part.YAW), List.of(Part.ELBOW)),
    JOINT_MOVE("joint-move", "joint move", List.of(), Part.with(Part.PERCENT)),
    STRAIGHT_MOVE("straight-move", "straight move", List.of(), Part.with(Part.SPEED)),
    WAIT("wait", "wait", List.of(Part.TIME), List.of()),
    LOOP_BEGIN("loop-begin", "a loop begins", List.of(Part.COUNT), List.of()),
    LOOP_END("loop-end", "the loop ends", List.of(), List.of()),
    CALL("call", "does a section", List.of(Part.SECTION), List.of()),
    COMMENT("comment", "comment", List.of(), List.of(Part.TEXT)),
    NO_MOTION("no-motion", "nothing moves", List.of(), List.of(Part.ACTION, Part.TITLE));

    private static final List<Part> PLACE = List.of(Part.X, Part.Y, Part.Z, Part.YAW);

    private final String word;
    private final String words;
    private final List<Part> needed;
    private final List<Part> possible;

    Meaning(String word, String words, List<Part> needed, List<Part> possible) {
        this.word = word;
        this.words = words;
        this.needed = needed;
        this.possible = possible;
    }

    /** As phrasebooks write it. */
    public String word() {
        return word;
    }

    /** As people say it. */
    public String words() {
        return words;
    }

    /** The parts that a phrase with this meaning lacks, given those that it has. */
    List<Part> missing(List<Part> has) {
        boolean isMove = this == JOINT_MOVE || this == STRAIGHT_MOVE;
        List<Part> wanted = isMove ? (has.contains(Part.POINT) ? List.of(Part.POINT) : PLACE) : needed;
        return wanted.stream().filter(part -> !has.contains(part)).toList();
    }

    boolean mayHave(Part part) {
        return needed.contains(part) || possible.contains(part);
    }

    /** Whether a point is named and a place is given too: which of them counts nobody knows. */
    boolean isTwofold(List<Part> has) {
        return this != POINT
                && has.contains(Part.POINT)
                && (has.contains(Part.ELBOW) || has.stream().anyMatch(PLACE::contains));
    }

    /** The meanings by their words, in the order of the list. */
    static Map<String, Meaning> byWord() {
        Map<String, Meaning> byWord = new LinkedHashMap<>();
        Arrays.stream(values()).forEach(meaning -> byWord.put(meaning.word, meaning));
        return byWord;
    }
}
