package org.standclear.core.forecast;

/**
 * What the simulated days came to.
 *
 * @param meanWait minutes from a ready bench to the technician, on average
 * @param ninetiethWait nine of ten wait no longer
 * @param shortRuns share of turns with too little time left to run
 * @param busy share of the slots' time that each technician is at a bench
 * @param days days simulated
 */
public record ReleaseWaits(Estimate meanWait, Estimate ninetiethWait, Estimate shortRuns, Estimate busy, int days) {}
