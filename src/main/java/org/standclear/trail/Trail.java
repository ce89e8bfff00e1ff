package org.standclear.trail;

import org.standclear.platform.ids.LabId;

/** The lab's record. What is appended commits with the transaction it happened in, or not at all. */
public interface Trail {

    /**
     * Appends an entry at the end of the running transaction, under the lab's one row lock.
     *
     * @throws IllegalStateException when no transaction is running
     */
    void append(TrailEntry entry);

    /** Recomputes the lab's chain and names the first entry that does not fit. */
    TrailVerification verify(LabId lab);
}
