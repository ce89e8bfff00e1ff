package org.standclear.core.limits;

import org.standclear.core.cell.CellDescription;
import org.standclear.core.cell.ContactLimit;
import org.standclear.core.motion.ProgramMotion;
import org.standclear.core.program.Declaration;
import org.standclear.core.program.Declared;
import org.standclear.core.program.MotionPlan;

/** All that the rules look at. */
public record CheckedProgram(
        CellDescription cell,
        CourseLimits course,
        ContactTable contactTable,
        MotionPlan plan,
        Declared declared,
        ProgramMotion motion,
        MotionFigures figures) {

    /** A program with its figures computed. */
    public static CheckedProgram of(
            CellDescription cell,
            CourseLimits course,
            ContactTable contactTable,
            MotionPlan plan,
            Declared declared,
            ProgramMotion motion) {
        ContactLimit contact = cell.limits().contact();
        ContactTable inForce = contact == null ? contactTable : contactTable.before(contact.values());
        return new CheckedProgram(cell, course, inForce, plan, declared, motion, MotionFigures.of(cell, motion));
    }

    /** What is declared. */
    public Declaration declaration() {
        return declared.values();
    }

    /** The part that is carried. */
    public CarriedPart part() {
        return CarriedPart.of(declaration(), cell);
    }

    /** The override that counts. */
    public LimitInForce overrideLimit() {
        return LimitInForce.ofCellAndCourse(cell.limits().overridePercent(), course.overridePercent());
    }

    /** The tool speed that counts. */
    public LimitInForce toolSpeedLimit() {
        return LimitInForce.ofCellAndCourse(cell.limits().toolSpeedMmS(), course.toolSpeedMmS());
    }
}
