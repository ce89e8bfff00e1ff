package org.standclear.check;

import java.util.List;
import org.jspecify.annotations.Nullable;

/**
 * What the bench needs of an answer: the values that are read again at the robot, and what would happen in full power.
 *
 * @param power {@code reduced} or {@code full}, as declared; null when not declared
 * @param overridePercent as declared; null when not declared
 * @param overrideLimitPercent the smaller of the cell's and the course's
 * @param tool code of the declared tool
 * @param loop as declared: a number of passes, or {@code forever}
 * @param fullPowerPeakMmS what the tool point would reach if the power step were skipped; null when not known
 * @param cautions what stays on the release card
 * @param toolSpeedLimitMmS the smaller of the cell's and the course's; null in answers older than the field
 * @param payloadLimitKg the cell's; null when the cell gives none
 */
public record BenchFacts(
        @Nullable String power,
        @Nullable Double overridePercent,
        double overrideLimitPercent,
        @Nullable String tool,
        @Nullable Double partKg,
        @Nullable Double payloadKg,
        @Nullable String loop,
        @Nullable Double heldPeakMmS,
        @Nullable Double fullPowerPeakMmS,
        @Nullable Double cycleTimeS,
        List<String> cautions,
        @Nullable Double toolSpeedLimitMmS,
        @Nullable Double payloadLimitKg) {

    public BenchFacts {
        cautions = List.copyOf(cautions);
    }
}
