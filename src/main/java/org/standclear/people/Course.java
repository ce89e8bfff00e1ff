package org.standclear.people;

import org.jspecify.annotations.Nullable;
import org.standclear.platform.ids.CourseId;

/**
 * A course and the limits it sets on its students' programs; the smaller of the cell's and the course's is in force.
 *
 * @param overridePercent in (0, 100]; 50 unless the instructor chose otherwise
 * @param toolSpeedMmS null when the course sets none
 */
public record Course(
        CourseId id,
        String code,
        String title,
        double overridePercent,
        @Nullable Double toolSpeedMmS) {}
