package org.standclear.core.program;

import org.standclear.core.arm.Arm;
import org.standclear.core.text.Reading;

/** Reads program files of one format. A reader keeps nothing between two files. */
public interface ProgramReader {

    /** The name that answers carry. */
    String name();

    /** What the text says; refused at the first thing that is wrong with it. */
    Reading<MotionPlan> read(String text);

    /** What points of an arm must say and how programs of this format say it, to follow the name of one that does not. */
    default String needs(Arm arm) {
        return arm.needs();
    }
}
