package org.standclear.benchmark.growth;

import java.time.Instant;
import java.util.UUID;

/**
 * One booking of the planted past with all that it led to.
 *
 * @param number from 1, in the order of time
 * @param ran whether it was released, run and closed out; otherwise the state says how it was lost
 */
record PastTurn(
        int number, Instant start, Instant end, Bench bench, UUID operator, UUID attendant, String state, Work work) {

    /** A cell that was booked, with the version it has. */
    record Bench(UUID cell, int version, int offsetMinutes) {}

    /** What was booked for, and the program that ran. */
    record Work(UUID course, UUID assignment, UUID revision, UUID answer) {}

    boolean ran() {
        return state.equals("CLOSED_OUT");
    }
}
