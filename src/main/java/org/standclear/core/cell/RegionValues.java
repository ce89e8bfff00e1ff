package org.standclear.core.cell;

/**
 * What one region of the body bears.
 *
 * @param contactPermitted whether it may be touched at all
 * @param quasiStaticN force of a lasting contact, N
 * @param stiffnessNPerMm its spring constant, N/mm
 * @param massKg its effective mass, kg
 * @param source where the values come from
 */
public record RegionValues(
        boolean contactPermitted, double quasiStaticN, double stiffnessNPerMm, double massKg, String source) {}
