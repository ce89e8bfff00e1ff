package org.standclear.core.program.phrases;

import java.util.ArrayList;
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
    POINT("point", "defines a point", List.of(Part.POINT), Part.somewhere()),
    JOINT_MOVE("joint-move", "joint move", List.of(), Part.somewhere(Part.POINT, Part.ACCELERATION, Part.PERCENT)),
    STRAIGHT_MOVE(
            "straight-move", "straight move", List.of(), Part.somewhere(Part.POINT, Part.ACCELERATION, Part.SPEED)),
    WAIT("wait", "wait", List.of(Part.TIME), List.of()),
    LOOP_BEGIN("loop-begin", "a loop begins", List.of(Part.COUNT), List.of()),
    LOOP_END("loop-end", "the loop ends", List.of(), List.of()),
    CALL("call", "does a section", List.of(Part.SECTION), List.of()),
    COMMENT("comment", "comment", List.of(), List.of(Part.TEXT)),
    NO_MOTION("no-motion", "nothing moves", List.of(), List.of(Part.ACTION, Part.TITLE));

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
        List<Part> wanted = new ArrayList<>(needed);
        boolean isMove = this == JOINT_MOVE || this == STRAIGHT_MOVE;
        if (this == POINT || isMove && !has.contains(Part.POINT)) {
            wanted.addAll(place(has));
        }
        return wanted.stream().filter(part -> !has.contains(part)).toList();
    }

    /** What says where a point is, in the way that the parts have begun to say it. */
    private static List<Part> place(List<Part> has) {
        if (has.stream().anyMatch(Part.AXES::contains)) {
            return Part.AXES;
        }
        List<Part> place = new ArrayList<>(Part.PLACE);
        if (has.stream().anyMatch(Part.POSTURE::contains)) {
            place.addAll(Part.POSTURE);
            place.add(Part.ELBOW);
        }
        return place;
    }

    boolean mayHave(Part part) {
        return needed.contains(part) || possible.contains(part);
    }

    /** Whether a point is said in two ways, by its name, its place or its axis values: which counts nobody knows. */
    boolean isTwofold(List<Part> has) {
        boolean axes = has.stream().anyMatch(Part.AXES::contains);
        boolean place = has.contains(Part.ELBOW)
                || has.stream().anyMatch(part -> Part.PLACE.contains(part) || Part.POSTURE.contains(part));
        return axes && place || this != POINT && has.contains(Part.POINT) && (axes || place);
    }

    /** The meanings by their words, in the order of the list. */
    static Map<String, Meaning> byWord() {
        Map<String, Meaning> byWord = new LinkedHashMap<>();
        Arrays.stream(values()).forEach(meaning -> byWord.put(meaning.word, meaning));
        return byWord;
    }
}
