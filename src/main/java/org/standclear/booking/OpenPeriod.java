package org.standclear.booking;

import java.time.LocalTime;

/** From when until when the lab is open, by its own clock; within one day. */
public record OpenPeriod(LocalTime opens, LocalTime closes) {

    public OpenPeriod {
        if (!opens.isBefore(closes)) {
            throw new IllegalArgumentException("the lab closes after it opens: " + opens + " to " + closes);
        }
    }
}
