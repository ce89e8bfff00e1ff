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
            return "joint move to " + PointWords.name(joint.target()) + " at " + ShownNumber.plain(joint.speedPercent())
                    + " %";
        }
        if (step instanceof Step.Paced paced) {
            return (paced instanceof Step.Arc ? "arc to " : "straight move to ") + PointWords.name(paced.target())
                    + " at " + ShownNumber.plain(paced.speedMmS()) + " mm/s";
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
        return before.accelerationPercent() == after.accelerationPercent()
                && speed(before) == speed(after)
                && round(before).equals(round(after));
    }

    /** How an arc goes round, in words; empty for what is none. */
    private static String round(Step.Moving step) {
        if (!(step instanceof Step.Arc arc)) {
            return "";
        }
        return "x " + ShownNumber.plain(arc.round().centreX()) + ", y "
                + ShownNumber.plain(arc.round().centreY()) + " "
                + (arc.round().clockwise() ? "clockwise" : "counter-clockwise");
    }

    /** In percent or mm/s; compared only between moves of one kind. */
    private static double speed(Step.Moving step) {
        if (step instanceof Step.Joint joint) {
            return joint.speedPercent();
        }
        return step instanceof Step.Paced paced ? paced.speedMmS() : 0;
    }

    private boolean isSameTarget(Step.Moving before, Step.Moving after) {
        if (PointWords.isUnnamed(before.target()) || PointWords.isUnnamed(after.target())) {
            return PointWords.isSamePlace(before.target(), after.target());
        }
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
            moves(a, b, what);
        } else if (before instanceof Step.Wait a && after instanceof Step.Wait b) {
            number("wait", a.seconds(), b.seconds(), "s", what);
        } else if (before instanceof Step.Action a
                && after instanceof Step.Action b
                && !a.name().equals(b.name())) {
            what.add("does " + b.name() + ", before " + a.name());
        }
        return what;
    }

    private void moves(Step.Moving before, Step.Moving after, List<String> what) {
        if (!isSameTarget(before, after)) {
            boolean unnamed = PointWords.isUnnamed(before.target()) && PointWords.isUnnamed(after.target());
            what.add(
                    unnamed
                            ? "end " + PointWords.way(before.target(), after.target())
                            : "goes to " + PointWords.name(after.target()) + ", before to "
                                    + PointWords.name(before.target()));
        }
        if (!round(before).equals(round(after))) {
            what.add("goes round " + round(after) + ", before round " + round(before));
        }
        number("speed", speed(before), speed(after), before instanceof Step.Joint ? "%" : "mm/s", what);
        number("acceleration", before.accelerationPercent(), after.accelerationPercent(), "%", what);
    }

    private static void number(String name, double before, double after, String unit, List<String> what) {
        if (before != after) {
            what.add(name + " " + ShownNumber.plain(before) + " to " + ShownNumber.plain(after) + " " + unit);
        }
    }
}
