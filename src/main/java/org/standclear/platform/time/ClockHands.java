package org.standclear.platform.time;

import java.time.Instant;

/** Sets the application's clock, where it can be set: while the demo college's past is played, and in tests. */
public interface ClockHands {

    /** Lets the clock stand at an instant. */
    void standAt(Instant instant);

    /** Lets the clock show the time of the machine again; a clock that only tests move stays where it stands. */
    void runOn();
}
