package org.standclear.architecture.planted;

import org.springframework.scheduling.annotation.Scheduled;

/** A round that forgets that there may be more than one lab. */
public final class RoundForOneLab {

    private int rounds;

    /** Goes round. */
    @Scheduled(fixedDelayString = "PT10S")
    public void round() {
        rounds++;
    }

    /** How often it went. */
    public int rounds() {
        return rounds;
    }
}
