package org.standclear.booking.web;

import java.util.List;
import org.standclear.core.forecast.BenchSteps;
import org.standclear.core.forecast.StepTime;

/**
 * The step times that a forecast reckons with: the lab's own where its log tells them, else estimated.
 *
 * @param source where they come from, for people
 */
record KnownSteps(BenchSteps steps, String source) {

    /** With fewer runs than this in the log the estimated step times hold. */
    static final int ENOUGH_RUNS = 50;

    /** What follows from the set-up times of so many runs, in minutes. */
    static KnownSteps of(List<Double> setUps) {
        BenchSteps estimated = BenchSteps.ESTIMATED;
        if (setUps.size() < ENOUGH_RUNS) {
            return new KnownSteps(
                    estimated,
                    "Step times are estimated until the log has " + ENOUGH_RUNS + " runs; it has " + setUps.size()
                            + ".");
        }
        return new KnownSteps(
                new BenchSteps(
                        new StepTime.Measured(setUps),
                        estimated.release(),
                        estimated.watch(),
                        estimated.noShow(),
                        estimated.closeOutMinutes()),
                "Set-up is that of the lab's own last " + setUps.size()
                        + " runs, from the slot's start until the e-stop"
                        + " attendant had signed the bench list. The log does not say when the technician began, nor how"
                        + " long the first start was watched: release work (2.5 to 7 min) and watching (1 to 4 min) are"
                        + " estimated, and no-shows (12 %) and close-out (4 min) assumed.");
    }
}
