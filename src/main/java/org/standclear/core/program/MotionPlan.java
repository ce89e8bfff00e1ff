package org.standclear.core.program;

import java.util.Collections;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.jspecify.annotations.Nullable;
import org.standclear.core.arm.Arm;
import org.standclear.core.geometry.Vector;

/**
 * A program as it was understood, whatever the format of its file.
 *
 * @param reader the name of the reader
 * @param title null when the file has none
 * @param points by name, in the order of the file
 * @param stated declarations in the file; the first that names a field declares it
 * @param found what the file states beside its declarations
 * @param coverage how much of the file the reader understood
 * @param notes how the reader took what could be taken in more than one way
 */
public record MotionPlan(
        String reader,
        @Nullable String title,
        Map<String, Point> points,
        List<Step> steps,
        List<StatedDeclaration> stated,
        List<Found> found,
        Coverage coverage,
        List<Note> notes) {

    public MotionPlan {
        points = Collections.unmodifiableMap(new LinkedHashMap<>(points));
        steps = List.copyOf(steps);
        stated = List.copyOf(stated);
        found = List.copyOf(found);
        notes = List.copyOf(notes);
    }

    /**
     * How the reader took something.
     *
     * @param line counted from 1
     * @param says a sentence for a person
     */
    public record Note(int line, String says) {}

    /** The same plan on an arm: points that the file gives as axis values get their places. */
    public MotionPlan on(Arm arm, Vector offset) {
        if (points.values().stream().allMatch(point -> point.axes() == null)) {
            return this;
        }
        Map<String, Point> placed = new LinkedHashMap<>();
        points.forEach((name, point) -> placed.put(name, point.on(arm, offset)));
        List<Step> moved = steps.stream()
                .map(step -> step instanceof Step.Moving moving
                        ? moving.to(placed.getOrDefault(moving.target().name(), moving.target()))
                        : step)
                .toList();
        return new MotionPlan(reader, title, placed, moved, stated, found, coverage, notes);
    }

    /** The point of that name. */
    public Optional<Point> point(String name) {
        return Optional.ofNullable(points.get(name));
    }

    /**
     * Lines that are neither empty nor comment.
     *
     * @param notUnderstood their numbers, counted from 1
     */
    public record Coverage(int linesUnderstood, int linesTotal, List<Integer> notUnderstood) {

        public Coverage {
            notUnderstood = List.copyOf(notUnderstood);
        }
    }
}
