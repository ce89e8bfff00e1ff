package org.standclear.cell;

import java.util.ArrayList;
import java.util.List;
import org.standclear.core.quantity.ShownNumber;

/** Compares what was done and read in a day test with the version in force. */
final class DayTestComparison {

    private DayTestComparison() {}

    /** What did not pass, one sentence each. */
    static List<String> failures(DayTestReadings read, CellVersion version, CellFacts facts) {
        List<String> failures = new ArrayList<>();
        if (!read.stayedStopped()) {
            failures.add("The arm did not stop and stay stopped on the e-stop at " + read.stopStation() + ".");
        }
        if (read.restartedOnUnlatching()) {
            failures.add("The arm moved again when the e-stop was unlatched.");
        }
        if (!read.armSound()) {
            failures.add("Cables, bolts or noise are not in order.");
        }
        if (!read.power().equals(facts.power())) {
            failures.add("Power mode reads " + read.power() + "; the cell's is " + facts.power() + ".");
        }
        // not "greater": a value that is no number has to fail as well
        if (!(read.overridePercent() <= facts.overridePercent())) {
            failures.add("Override reads " + ShownNumber.plain(read.overridePercent()) + " %; the cell's limit is "
                    + ShownNumber.plain(facts.overridePercent()) + " %.");
        }
        if (!CellGates.sameCode(read.toolCode(), version.fittedTool())) {
            failures.add("The fitted tool reads " + read.toolCode() + "; version " + version.number() + " has "
                    + version.fittedTool() + ".");
        }
        if (!read.lineAndSignInPlace()) {
            failures.add("Floor line or sign is not in place.");
        }
        return failures;
    }
}
