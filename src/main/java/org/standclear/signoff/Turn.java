package org.standclear.signoff;

import java.time.Duration;
import java.time.Instant;

/**
 * How long somebody has been at the e-stop without a rest.
 *
 * @param soFar with a hand on it, as the signatures say
 * @param limit the longest turn
 * @param asOf when that was read
 */
public record Turn(Duration soFar, Duration limit, Instant asOf) {

    /** Whether somebody else takes the e-stop now. */
    public boolean over() {
        return soFar.compareTo(limit) >= 0;
    }

    /** When it is over, if the person stays. */
    public Instant until() {
        return asOf.plus(limit.minus(soFar));
    }
}
