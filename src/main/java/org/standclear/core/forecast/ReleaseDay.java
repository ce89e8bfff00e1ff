package org.standclear.core.forecast;

import java.util.List;

/**
 * The day that is simulated: the same number of slots one after the other on every cell.
 *
 * @param slotMinutes length of a slot
 * @param slots slots of each cell
 * @param startMinutes for each cell, how many minutes after the first its slots start
 * @param technicians who release; the first free one takes whoever is ready longest
 * @param shortRunMinutes a turn with less time left to run than this is a short one
 */
public record ReleaseDay(
        double slotMinutes, int slots, List<Double> startMinutes, int technicians, double shortRunMinutes) {

    public ReleaseDay {
        startMinutes = List.copyOf(startMinutes);
        if (!(slotMinutes > 0 && slots > 0 && !startMinutes.isEmpty() && technicians > 0 && shortRunMinutes >= 0)) {
            throw new IllegalArgumentException("a day needs slots, cells and a technician");
        }
        if (!startMinutes.stream().allMatch(start -> start >= 0 && start < Double.POSITIVE_INFINITY)) {
            throw new IllegalArgumentException("a start lies 0 or more minutes after the first");
        }
    }
}
