package org.standclear.core.limits.rules;

import static org.standclear.core.quantity.ShownNumber.plain;

import java.math.BigDecimal;
import java.math.RoundingMode;
import java.util.List;
import java.util.Optional;
import org.standclear.core.arm.Axis;
import org.standclear.core.geometry.Vector;
import org.standclear.core.limits.CheckedProgram;
import org.standclear.core.limits.Details;
import org.standclear.core.motion.StepKind;
import org.standclear.core.motion.StepMotion;
import org.standclear.core.text.Words;

/** Where in a program, or in the cell, a finding is: turns of phrase that the rules share. */
final class Places {

    /** Why the way is not known. */
    static final String MISSING_WAYS =
            "The way of a step cannot be computed, because a point is out of reach." + " Mend that first.";

    private static final int MOST_NAMED = 5;

    private Places() {}

    /** Why the speeds of a program are not known. */
    static String missingSpeeds(CheckedProgram program) {
        Optional<StepMotion> unknown =
                program.motion().steps().stream().filter(StepMotion::isUnknown).findFirst();
        if (unknown.isEmpty()) {
            return "Only the first move is there, and nothing says where it starts. Write start: with a point's name.";
        }
        Optional<String> axis = program.cell().arm().axes().stream()
                .filter(one -> one.speed() == null)
                .map(Axis::name)
                .findFirst();
        boolean lacksSpeed =
                unknown.get().kind() == StepKind.JOINT && unknown.get().trace() != null;
        return lacksSpeed && axis.isPresent()
                ? "The speed" + in(unknown) + " cannot be computed. " + noSpeedOf(axis.get())
                : "The speed" + in(unknown) + " cannot be computed, because a point or a line is out of reach."
                        + " Mend that first.";
    }

    /** What is missing when the cell file leaves an axis's speed out. */
    static String noSpeedOf(String axis) {
        return "The cell file gives no speed of the axis " + axis
                + ", so moves of this axis cannot be computed. Whoever keeps the cell file has to add it.";
    }

    /** " in step 3", or " in the closing move of the loop". */
    static String in(Optional<StepMotion> step) {
        return step.map(Places::in).orElse("");
    }

    static String in(StepMotion step) {
        return step.closing() ? " in the move that closes the loop" : " in step " + step.step();
    }

    static Details at(Details details, Optional<StepMotion> step) {
        return step.map(one -> details.atStep(one.step(), one.line())).orElse(details);
    }

    /** "point b", or "the start" when it is not a step's. */
    static String point(int step, String name) {
        return step == 0 ? "The start " + Words.quoted(name) : "The point " + Words.quoted(name);
    }

    /** " The same in steps 4 and 7." */
    static String others(List<Integer> steps) {
        List<String> others = steps.stream()
                .filter(step -> step > 0)
                .distinct()
                .limit(MOST_NAMED)
                .map(String::valueOf)
                .toList();
        if (others.isEmpty()) {
            return "";
        }
        String more = steps.stream().filter(step -> step > 0).distinct().count() > MOST_NAMED ? " and more" : "";
        return " The same in " + (others.size() == 1 ? "step " : "steps ") + Words.allOf(others) + more + ".";
    }

    /** A place to a tenth of a millimetre. */
    static String near(Vector place) {
        return "x " + rounded(place.x()) + ", y " + rounded(place.y()) + ", z " + rounded(place.z());
    }

    private static String rounded(double value) {
        return plain(
                BigDecimal.valueOf(value).setScale(1, RoundingMode.HALF_EVEN).doubleValue());
    }
}
