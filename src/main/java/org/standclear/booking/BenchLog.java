package org.standclear.booking;

import java.util.List;

/** How long people took to get a bench ready, as whoever keeps the bench's log reads it. */
public interface BenchLog {

    /**
     * Minutes from the slot's start until the bench was ready for the technician, which is when the e-stop attendant had
     * signed the bench list; 0 when that was before the slot's start. The latest turns that led to a run, at most that
     * many. The log does not say when the technician began, so neither the wait nor the release work can be read from it.
     */
    List<Double> setUps(int atMost);
}
