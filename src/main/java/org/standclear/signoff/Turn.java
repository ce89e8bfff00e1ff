package org.standclear.signoff;

import java.time.Duration;
import java.time.Instant;

/**
 * How long somebody has been at the e-stop without a rest.
 *
 * @param soFar with a hand on it, as the signatures say
 * @param limit the longest turn
 * @param asOf when that was read
 * @param told false when the clock was set back to before the turn began: how long it is nobody knows, and it counts whole
 */
public record Turn(Duration soFar, Duration limit, Instant asOf, boolean told) {

    /** One whose length is known. */
    public Turn(Duration soFar, Duration limit, Instant asOf) {
        this(soFar, limit, asOf, true);
    }

    /** One that began later than now says: it counts as a whole one. */
    public static Turn untold(Duration limit, Instant asOf) {
        return new Turn(limit, limit, asOf, false);
    }

    /** Whether somebody else takes the e-stop now. */
    public boolean over() {
        return soFar.compareTo(limit) >= 0;
    }

    /** When it is over, if the person stays. */
    public Instant until() {
        return asOf.plus(limit.minus(soFar));
    }
}
