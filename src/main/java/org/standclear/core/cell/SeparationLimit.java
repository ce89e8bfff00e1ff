package org.standclear.core.cell;

/** What the separation distance is computed from, and what follows when the stand line is nearer. */
public record SeparationLimit(
        Obligation rule,
        double humanSpeedMmS,
        double intrusionMm,
        double personUncertaintyMm,
        double robotUncertaintyMm) {}
