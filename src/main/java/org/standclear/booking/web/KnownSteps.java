package org.standclear.booking.web;

import java.util.List;
import java.util.Locale;
import org.standclear.booking.NoShows;
import org.standclear.core.forecast.BenchSteps;
import org.standclear.core.forecast.StepTime;

/**
 * The step times that a forecast reckons with: each the lab's own where its log tells it often enough, else estimated.
 *
 * @param sources where each comes from, for people
 */
record KnownSteps(BenchSteps steps, List<String> sources) {

    /** With fewer runs, or bookings, than this in the log what was estimated holds. */
    static final int ENOUGH = 50;

    private static final BenchSteps ESTIMATED = BenchSteps.ESTIMATED;

    private static final String OF_THE_REST =
            "How long the first start is watched is not in the log: it is estimated (1 to 4 min), and close-out (4 min)"
                    + " is assumed.";

    /** What follows from so many set-ups and releases, in minutes, and from so many bookings. */
    static KnownSteps of(List<Double> setUps, List<Double> releaseWork, NoShows.Counted noShows) {
        return new KnownSteps(
                new BenchSteps(
                        known(setUps, ESTIMATED.setUp()),
                        known(releaseWork, ESTIMATED.release()),
                        ESTIMATED.watch(),
                        isEnough(noShows) ? noShows.share() : ESTIMATED.noShow(),
                        ESTIMATED.closeOutMinutes()),
                List.of(ofSetUp(setUps), ofReleaseWork(releaseWork), ofNoShows(noShows), OF_THE_REST));
    }

    private static boolean isEnough(NoShows.Counted noShows) {
        return noShows.bookings() >= ENOUGH;
    }

    private static StepTime known(List<Double> minutes, StepTime estimated) {
        return minutes.size() < ENOUGH ? estimated : new StepTime.Measured(minutes);
    }

    private static String ofSetUp(List<Double> minutes) {
        return minutes.size() < ENOUGH
                ? "Set-up is estimated (4 to 11 min) until the log has " + ENOUGH + " runs; it has " + minutes.size()
                        + "."
                : "Set-up is that of the lab's own last " + minutes.size()
                        + " runs, from the slot's start until the e-stop attendant had signed the bench list.";
    }

    private static String ofReleaseWork(List<Double> minutes) {
        return minutes.size() < ENOUGH
                ? "Release work is estimated (2.5 to 7 min) until the log has " + ENOUGH
                        + " runs with the technician's first answer; it has " + minutes.size() + "."
                : "Release work is that of the lab's own last " + minutes.size()
                        + " runs, from the technician's first answer until the release was signed; neither the wait nor"
                        + " a look before that answer is in it.";
    }

    private static String ofNoShows(NoShows.Counted counted) {
        String share = ReleaseForecast.percent(isEnough(counted) ? counted.share() : ESTIMATED.noShow());
        return isEnough(counted)
                ? String.format(
                        Locale.ROOT,
                        "No-shows are those of the lab's own last %d bookings: %d, %s; excused ones and those that staff"
                                + " moved are not counted.",
                        counted.bookings(),
                        counted.missed(),
                        share)
                : "No-shows are assumed (" + share + ") until " + ENOUGH + " bookings of the lab are over; "
                        + counted.bookings() + (counted.bookings() == 1 ? " is." : " are.");
    }
}
