package org.standclear.core.limits;

import org.jspecify.annotations.Nullable;

/** The smaller of two limits, and whose it is; on equal ones the cell's. */
public record LimitInForce(double value, LimitSource from) {

    static LimitInForce ofCellAndCourse(double cell, @Nullable Double course) {
        return course != null && course < cell
                ? new LimitInForce(course, LimitSource.COURSE)
                : new LimitInForce(cell, LimitSource.CELL);
    }

    /** "the limit of the course". */
    public String words() {
        return switch (from) {
            case CELL -> "the limit of the cell";
            case COURSE -> "the limit of the course";
            case ARM -> "what the arm is rated for";
        };
    }
}
