package org.standclear.booking.web;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.SplittableRandom;
import org.junit.jupiter.api.Test;
import org.standclear.core.forecast.BenchSteps;

/** From which run on a lab reckons with its own times, and what it never takes from its log. */
class KnownStepsTests {

    @Test
    void estimatesWithOneRunTooFew() {
        KnownSteps known = KnownSteps.of(Collections.nCopies(49, 30.0));

        assertThat(known.steps()).isEqualTo(BenchSteps.ESTIMATED);
        assertThat(known.source()).isEqualTo("Step times are estimated until the log has 50 runs; it has 49.");
    }

    @Test
    void takesTheLabsOwnSetUpFromTheFiftiethRunOn() {
        List<Double> setUps = new ArrayList<>(Collections.nCopies(25, 4.0));
        setUps.addAll(Collections.nCopies(25, 9.0));

        KnownSteps known = KnownSteps.of(setUps);

        // (25 x 4 + 25 x 9) / 50
        assertThat(known.steps().setUp().mean()).isEqualTo(6.5);
        assertThat(known.steps().setUp().draw(new SplittableRandom(1))).isIn(4.0, 9.0);
        assertThat(known.source()).startsWith("Set-up is that of the lab's own last 50 runs");
    }

    @Test
    void leavesEstimatedWhatTheLogCannotTell() {
        BenchSteps steps = KnownSteps.of(Collections.nCopies(50, 6.5)).steps();

        assertThat(steps.release()).isEqualTo(BenchSteps.ESTIMATED.release());
        assertThat(steps.watch()).isEqualTo(BenchSteps.ESTIMATED.watch());
        assertThat(KnownSteps.of(Collections.nCopies(50, 6.5)).source())
                .contains("The log does not say when the technician began")
                .contains("release work (2.5 to 7 min)");
    }
}
