package org.standclear.core.program;

import java.util.Collections;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.jspecify.annotations.Nullable;

/**
 * A program as it was understood, whatever the format of its file.
 *
 * @param reader the name of the reader
 * @param title null when the file has none
 * @param points by name, in the order of the file
 * @param stated declarations in the file; the first that names a field declares it
 * @param found what the file states beside its declarations
 * @param coverage how much of the file the reader understood
 */
public record MotionPlan(
        String reader,
        @Nullable String title,
        Map<String, Point> points,
        List<Step> steps,
        List<StatedDeclaration> stated,
        List<Found> found,
        Coverage coverage) {

    public MotionPlan {
        points = Collections.unmodifiableMap(new LinkedHashMap<>(points));
        steps = List.copyOf(steps);
        stated = List.copyOf(stated);
        found = List.copyOf(found);
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
