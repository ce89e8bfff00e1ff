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

        /** The same step to another point. */
        Moving to(Point point);
    }

    /** A moving step on which the tool point's speed is given, as written, before any override. */
    sealed interface Paced extends Moving {

        /** In mm/s. */
        double speedMmS();
    }

    /** Every axis goes evenly from where it stands to where it has to be; percentage of each axis's own speed. */
    record Joint(int number, int line, Point target, double speedPercent, double accelerationPercent)
            implements Moving {

        @Override
        public Joint to(Point point) {
            return new Joint(number, line, point, speedPercent, accelerationPercent);
        }
    }

    /** The tool point goes in a straight line. */
    record Straight(int number, int line, Point target, double speedMmS, double accelerationPercent) implements Paced {

        @Override
        public Straight to(Point point) {
            return new Straight(number, line, point, speedMmS, accelerationPercent);
        }
    }

    /** The tool point goes round, from wherever it stands, at an even distance from an axis that is parallel to z. */
    record Arc(int number, int line, Point target, Round round, double speedMmS, double accelerationPercent)
            implements Paced {

        @Override
        public Arc to(Point point) {
            return new Arc(number, line, point, round, speedMmS, accelerationPercent);
        }
    }

    /**
     * How an arc goes round.
     *
     * @param centreX of its axis, mm
     * @param centreY of its axis, mm
     * @param clockwise seen from above
     */
    record Round(double centreX, double centreY, boolean clockwise) {

        /**
         * By how much the ends of an arc may differ in their distance from the centre, mm: what numbers written with
         * three decimals leave (0.002 mm also in NIST IR 6556, The NIST RS274/NGC Interpreter, 3.5.3).
         */
        public static final double ROUNDING_MM = 0.002;
    }

    /** The arm stands for a time. */
    record Wait(int number, int line, double seconds) implements Step {}

    /** Something with a name happens, in no time. */
    record Action(int number, int line, String name) implements Step {}
}
