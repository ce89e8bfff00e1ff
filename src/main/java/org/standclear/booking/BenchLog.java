package org.standclear.booking;

import java.util.List;

/** How long the steps of past turns took, as whoever keeps the bench's log reads them. */
public interface BenchLog {

    /** The latest turns that led to a run, at most that many. */
    List<Steps> latest(int atMost);

    /**
     * Minutes of one turn.
     *
     * @param setUp from the slot's start until operator and attendant had signed the session list
     * @param release from the opened bench list until the release
     */
    record Steps(double setUp, double release) {}
}
