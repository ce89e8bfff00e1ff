package org.standclear.core.cell;

import org.jspecify.annotations.Nullable;

/**
 * What is known of an arm beside its geometry.
 *
 * @param straightSpeedMmS the fastest straight move that it accepts
 * @param ratedPayloadKg null when it is not known
 * @param reducedPowerSpeedMmS its own ceiling in reduced power, as verified; null when never verified
 * @param reactionS from the stop signal until it begins to slow down
 * @param stoppingS from then until it stands
 */
public record ArmFacts(
        double straightSpeedMmS,
        double straightAccelerationMmS2,
        double movingMassKg,
        @Nullable Double ratedPayloadKg,
        @Nullable Double reducedPowerSpeedMmS,
        double reactionS,
        double stoppingS) {}
