package org.standclear.signoff;

/**
 * Checks programs of upcoming bookings anew when their cell has a new version or another phrasebook, their course other
 * limits, or the check new rules. What is pending is read from the data each time, so that nothing is forgotten over a restart.
 */
public interface Rechecks {

    /** Checks anew what is pending, the next starts first, at most so many; says how many it brought up to date. */
    int runPending(int atMost);

    /** How many upcoming bookings wait for their re-check. */
    int pending();
}
