package org.standclear.booking.web;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.SplittableRandom;
import org.junit.jupiter.api.Test;
import org.standclear.booking.NoShows.Counted;
import org.standclear.core.forecast.BenchSteps;
import org.standclear.core.forecast.StepTime;

/** From which run on a lab reckons with its own times, and what it never takes from its log. */
class KnownStepsTests {

    private static final List<Double> NONE = List.of();
    private static final Counted NOBODY = new Counted(0, 0);

    private static String said(KnownSteps known) {
        return String.join(" ", known.sources());
    }

    private static List<Double> half(double one, double other) {
        List<Double> times = new ArrayList<>(Collections.nCopies(25, one));
        times.addAll(Collections.nCopies(25, other));
        return times;
    }

    @Test
    void estimatesWithOneTooFewOfEach() {
        List<Double> tooFew = Collections.nCopies(49, 30.0);

        KnownSteps known = KnownSteps.of(tooFew, tooFew, new Counted(20, 49));

        assertThat(known.steps()).isEqualTo(BenchSteps.ESTIMATED);
        assertThat(said(known))
                .isEqualTo("Set-up is estimated (4 to 11 min) until the log has 50 runs; it has 49."
                        + " Release work is estimated (2.5 to 7 min) until the log has 50 runs with the technician's first"
                        + " answer; it has 49."
                        + " No-shows are assumed (12 %) until 50 bookings of the lab are over; 49 are."
                        + " How long the first start is watched is not in the log: it is estimated (1 to 4 min), and"
                        + " close-out (4 min) is assumed.");
    }

    @Test
    void takesTheLabsOwnSetUpFromTheFiftiethRunOn() {
        KnownSteps known = KnownSteps.of(half(4, 9), NONE, NOBODY);

        // (25 x 4 + 25 x 9) / 50
        assertThat(known.steps().setUp().mean()).isEqualTo(6.5);
        assertThat(known.steps().setUp().draw(new SplittableRandom(1))).isIn(4.0, 9.0);
        assertThat(known.steps().release()).isEqualTo(BenchSteps.ESTIMATED.release());
        assertThat(known.steps().noShow()).isEqualTo(0.12);
        assertThat(said(known))
                .startsWith("Set-up is that of the lab's own last 50 runs")
                .contains("Release work is estimated (2.5 to 7 min)");
    }

    @Test
    void takesTheLabsOwnReleaseWorkFromTheFiftiethRunOn() {
        KnownSteps known = KnownSteps.of(NONE, half(2, 5), NOBODY);

        // (25 x 2 + 25 x 5) / 50
        assertThat(known.steps().release().mean()).isEqualTo(3.5);
        assertThat(known.steps().release()).isInstanceOf(StepTime.Measured.class);
        assertThat(known.steps().setUp()).isEqualTo(BenchSteps.ESTIMATED.setUp());
        assertThat(said(known))
                .contains("Release work is that of the lab's own last 50 runs, from the technician's first answer until"
                        + " the release was signed")
                .contains("Set-up is estimated (4 to 11 min) until the log has 50 runs; it has 0.");
    }

    @Test
    void takesTheLabsOwnNoShowsFromTheFiftiethBookingOn() {
        KnownSteps known = KnownSteps.of(NONE, NONE, new Counted(4, 50));

        // 4 / 50
        assertThat(known.steps().noShow()).isEqualTo(0.08);
        assertThat(said(known)).contains("No-shows are those of the lab's own last 50 bookings: 4, 8 %; excused ones");
    }

    @Test
    void takesALabToWhichEverybodyComesAsItIs() {
        assertThat(KnownSteps.of(NONE, NONE, new Counted(0, 400)).steps().noShow())
                .isZero();
    }

    @Test
    void leavesEstimatedWhatTheLogCannotTell() {
        List<Double> enough = Collections.nCopies(50, 6.5);

        BenchSteps steps = KnownSteps.of(enough, enough, new Counted(4, 50)).steps();

        assertThat(steps.watch()).isEqualTo(BenchSteps.ESTIMATED.watch());
        assertThat(steps.closeOutMinutes()).isEqualTo(4);
    }
}
