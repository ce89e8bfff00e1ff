package org.standclear.core.forecast;

import java.time.LocalDate;

/**
 * What one section needs before its due date.
 *
 * @param section whose due date it is, as people call it
 * @param units people or pairs that each need turns
 * @param turnsEach turns that each needs before the due date
 * @param due the last day that counts
 */
public record DueWave(String section, int units, int turnsEach, LocalDate due) {

    public DueWave {
        if (units < 0 || turnsEach < 0) {
            throw new IllegalArgumentException("units and turns are 0 or more");
        }
    }

    /** The same, due on another day. */
    public DueWave dueOn(LocalDate day) {
        return new DueWave(section, units, turnsEach, day);
    }

    /** Turns that the section needs in all. */
    public int turns() {
        return units * turnsEach;
    }
}
