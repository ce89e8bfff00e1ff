package org.standclear.core.motion;

import java.util.List;
import org.standclear.core.program.DeclarationField;
import org.standclear.core.program.Declared;
import org.standclear.core.program.Found;

/** The override that counts at each step: the declared one, or a later one in the file where that is greater. */
final class Overrides {

    private final double declared;
    private final List<Found> found;

    Overrides(Declared declared) {
        Double percent = declared.values().overridePercent();
        this.declared = percent == null ? 100 : percent;
        this.found = declared.found(DeclarationField.OVERRIDE);
    }

    /** Part of the speed at a step. */
    double at(int step) {
        double inForce = 0;
        int since = 0;
        for (Found one : found) {
            if (one.fromStep() <= step && one.fromStep() >= since) {
                // of several that stand together nobody knows which one wins
                inForce = one.fromStep() == since ? Math.max(inForce, percent(one)) : percent(one);
                since = one.fromStep();
            }
        }
        return Math.max(declared, inForce) / 100;
    }

    private static double percent(Found one) {
        return (Double) one.value();
    }
}
