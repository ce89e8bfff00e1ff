package org.standclear.cell;

import org.standclear.core.quantity.ShownNumber;

/**
 * What the technician did and read at the cell; the items of the day test.
 *
 * @param stopStation which e-stop was pressed while the arm moved slowly with nobody near
 * @param stayedStopped whether the arm stopped and stayed stopped
 * @param restartedOnUnlatching whether it moved again when the e-stop was unlatched
 * @param armSound cables and bolts in order, no odd noise
 * @param power {@code reduced} or {@code full}, read on the display
 * @param sensitivity the level of the collision detection, as the display shows it
 * @param overridePercent read on the display
 * @param toolCode read on the fitted tool
 * @param lineAndSignInPlace floor line and sign
 */
public record DayTestReadings(
        String stopStation,
        boolean stayedStopped,
        boolean restartedOnUnlatching,
        boolean armSound,
        String power,
        String sensitivity,
        double overridePercent,
        String toolCode,
        boolean lineAndSignInPlace) {

    public DayTestReadings {
        if (!"reduced".equals(power) && !"full".equals(power)) {
            throw new IllegalArgumentException("power is reduced or full");
        }
        if (!(overridePercent > 0 && overridePercent <= 100)) {
            throw new IllegalArgumentException("an override is above 0 and at most 100 %");
        }
    }

    /** What was read on the display, in a line. */
    public String display() {
        return power + " power, " + ShownNumber.plain(overridePercent) + " %, sensitivity " + sensitivity;
    }
}
