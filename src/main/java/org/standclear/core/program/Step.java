package org.standclear.core.program;

/** One step of a program: numbered from 1, on a line counted from 1. */
public sealed interface Step {

    /** Its number. */
    int number();

    /** Its line. */
    int line();

    /** A step that moves the arm to a point. */
    sealed interface Moving extends Step {

        /** Where it goes. */
        Point target();

        /** Percentage of the acceleration that the arm has. */
        double accelerationPercent();
    }

    /** Every axis goes evenly from where it stands to where it has to be; percentage of each axis's own speed. */
    record Joint(int number, int line, Point target, double speedPercent, double accelerationPercent)
            implements Moving {}

    /** The tool point goes in a straight line; the speed is as written, before any override. */
    record Straight(int number, int line, Point target, double speedMmS, double accelerationPercent)
            implements Moving {}

    /** The arm stands for a time. */
    record Wait(int number, int line, double seconds) implements Step {}

    /** Something with a name happens, in no time. */
    record Action(int number, int line, String name) implements Step {}
}
