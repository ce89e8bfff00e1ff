package org.standclear.signoff;

import java.time.Duration;

/**
 * The numbers of the bench; an instructor changes them with a reason, and every change is kept.
 *
 * @param releaseHoldsMinutes a release that is not started by then lapses
 * @param sessionOpensMinutes how long before the slot the session list can be signed
 * @param turnMinutes the longest turn at the e-stop
 * @param restMinutes away from the e-stop this long, a new turn begins
 * @param firstRunMinutes how long a watched first run may go on
 * @param lookAfterStops so many protective stops in one slot hold the cell
 */
public record BenchSettings(
        int releaseHoldsMinutes,
        int sessionOpensMinutes,
        int turnMinutes,
        int restMinutes,
        int firstRunMinutes,
        int lookAfterStops) {

    /** What holds until somebody changes it. */
    public static final BenchSettings DEFAULTS = new BenchSettings(10, 10, 15, 15, 5, 2);

    public BenchSettings {
        require(releaseHoldsMinutes >= 1 && releaseHoldsMinutes <= 30, "a release holds 1 to 30 minutes");
        require(sessionOpensMinutes >= 0 && sessionOpensMinutes <= 60, "the session list opens 0 to 60 minutes before");
        require(turnMinutes >= 1 && turnMinutes <= 60, "a turn is 1 to 60 minutes");
        require(restMinutes >= 1 && restMinutes <= 60, "a rest is 1 to 60 minutes");
        require(firstRunMinutes >= 1 && firstRunMinutes <= 60, "a first run is 1 to 60 minutes");
        require(lookAfterStops >= 1 && lookAfterStops <= 5, "look after 1 to 5 protective stops");
    }

    /** How long a release waits for its start. */
    public Duration releaseHolds() {
        return Duration.ofMinutes(releaseHoldsMinutes);
    }

    /** How long before the slot the session list opens. */
    public Duration sessionOpens() {
        return Duration.ofMinutes(sessionOpensMinutes);
    }

    /** The longest turn at the e-stop. */
    public Duration turn() {
        return Duration.ofMinutes(turnMinutes);
    }

    /** How long away from the e-stop makes a new turn. */
    public Duration rest() {
        return Duration.ofMinutes(restMinutes);
    }

    /** The longest watched first run. */
    public Duration firstRun() {
        return Duration.ofMinutes(firstRunMinutes);
    }

    private static void require(boolean holds, String says) {
        if (!holds) {
            throw new IllegalArgumentException(says);
        }
    }
}
