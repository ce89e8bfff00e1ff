package org.standclear.core.difference;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import org.standclear.core.program.Step;
import org.standclear.core.quantity.ShownNumber;

/** What steps do, in words, and how alike two are. Names of points that were only renamed count as the same. */
final class StepActs {

    /** Costs of changing one step into another; leaving one out or putting one in costs {@link #GAP}. */
    static final int GAP = 10;

    private static final int OTHER_NUMBERS = 4;
    private static final int OTHER_KIND = 8;
    private static final int OTHER_TARGET = 14;
    private static final int NOTHING_ALIKE = 2 * GAP + 1;

    private final Map<String, String> renamed;

    StepActs(Map<String, String> renamed) {
        this.renamed = Map.copyOf(renamed);
    }

    static String act(Step step) {
        if (step instanceof Step.Joint joint) {
            return "joint move to " + joint.target().name() + " at " + ShownNumber.plain(joint.speedPercent()) + " %";
        }
        if (step instanceof Step.Straight straight) {
            return "straight move to " + straight.target().name() + " at " + ShownNumber.plain(straight.speedMmS())
                    + " mm/s";
        }
        if (step instanceof Step.Moving moving) {
            return "move to " + moving.target().name();
        }
        if (step instanceof Step.Wait wait) {
            return "wait of " + ShownNumber.plain(wait.seconds()) + " s";
        }
        return step instanceof Step.Action action ? "action " + action.name() : "step";
    }

    /** How much it takes to make one into the other; 0 when they do the same. */
    int cost(Step before, Step after) {
        if (before.getClass() != after.getClass()) {
            boolean sameTarget =
                    before instanceof Step.Moving a && after instanceof Step.Moving b && isSameTarget(a, b);
            return sameTarget ? OTHER_KIND : NOTHING_ALIKE;
        }
        if (before instanceof Step.Moving a && after instanceof Step.Moving b) {
            return (isSameTarget(a, b) ? 0 : OTHER_TARGET) + (hasSameNumbers(a, b) ? 0 : OTHER_NUMBERS);
        }
        if (before instanceof Step.Wait a && after instanceof Step.Wait b) {
            return a.seconds() == b.seconds() ? 0 : OTHER_NUMBERS;
        }
        return act(before).equals(act(after)) ? 0 : OTHER_TARGET;
    }

    private static boolean hasSameNumbers(Step.Moving before, Step.Moving after) {
        return before.accelerationPercent() == after.accelerationPercent() && speed(before) == speed(after);
    }

    /** In percent or mm/s; compared only between moves of one kind. */
    private static double speed(Step.Moving step) {
        if (step instanceof Step.Joint joint) {
            return joint.speedPercent();
        }
        return step instanceof Step.Straight straight ? straight.speedMmS() : 0;
    }

    private boolean isSameTarget(Step.Moving before, Step.Moving after) {
        String name = before.target().name();
        return renamed.getOrDefault(name, name).equals(after.target().name());
    }

    /** What the later one does otherwise, each in words. */
    List<String> what(Step before, Step after) {
        List<String> what = new ArrayList<>();
        if (before.getClass() != after.getClass()) {
            return List.of("is a " + act(after) + ", before a " + act(before));
        }
        if (before instanceof Step.Moving a && after instanceof Step.Moving b) {
            if (!isSameTarget(a, b)) {
                what.add("goes to " + b.target().name() + ", before to "
                        + a.target().name());
            }
            if (a instanceof Step.Joint) {
                number("speed", speed(a), speed(b), "%", what);
            } else if (a instanceof Step.Straight) {
                number("speed", speed(a), speed(b), "mm/s", what);
            }
            number("acceleration", a.accelerationPercent(), b.accelerationPercent(), "%", what);
        } else if (before instanceof Step.Wait a && after instanceof Step.Wait b) {
            number("wait", a.seconds(), b.seconds(), "s", what);
        } else if (before instanceof Step.Action a
                && after instanceof Step.Action b
                && !a.name().equals(b.name())) {
            what.add("does " + b.name() + ", before " + a.name());
        }
        return what;
    }

    private static void number(String name, double before, double after, String unit, List<String> what) {
        if (before != after) {
            what.add(name + " " + ShownNumber.plain(before) + " to " + ShownNumber.plain(after) + " " + unit);
        }
    }
}
