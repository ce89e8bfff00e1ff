package org.standclear.booking;

import java.util.List;

/** How long people took at the bench, as whoever keeps the bench's log reads it. */
public interface BenchLog {

    /**
     * Minutes from the slot's start until the bench was ready for the technician, which is when the e-stop attendant had
     * signed the bench list; 0 when that was before the slot's start. The latest turns that led to a run, at most that
     * many.
     */
    List<Double> setUps(int atMost);

    /**
     * Minutes from the releaser's first answer to the bench list until the release was signed, for the first release of a
     * turn that led to a run, by the whole list. The wait before that answer is not in it. What two accounts answered is
     * left out, since the one may have waited for the other, and so is what the clock turned round.
     */
    List<Double> releaseWork(int atMost);
}
