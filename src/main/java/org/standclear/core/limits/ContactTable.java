package org.standclear.core.limits;

import java.util.Collections;
import java.util.EnumMap;
import java.util.Map;
import org.standclear.core.cell.BodyRegion;
import org.standclear.core.cell.RegionValues;

/**
 * What regions of the body bear, and how fast an arm of some mass may touch them. Estimates from published tables: only
 * measured force and pressure release a contact application.
 *
 * @param name what people call the table
 * @param provenance where the numbers come from altogether; each region says it for its own
 */
public record ContactTable(String name, String provenance, Map<BodyRegion, RegionValues> regions) {

    private static final double NEWTON_PER_METRE = 1000;
    private static final double MM_PER_METRE = 1000;

    /** A transient contact may have twice the force of a lasting one (ISO/TS 15066:2016 Annex A). */
    private static final double TRANSIENT = 2;

    public ContactTable {
        regions = Collections.unmodifiableMap(new EnumMap<>(regions));
    }

    /** The same with the own values of a cell before those of the table. */
    public ContactTable before(Map<BodyRegion, RegionValues> own) {
        Map<BodyRegion, RegionValues> together = new EnumMap<>(regions);
        together.putAll(own);
        return new ContactTable(name, provenance, together);
    }

    /** Where the values of a region come from, in words. */
    public String source(BodyRegion region) {
        RegionValues values = regions.get(region);
        return values == null ? provenance : values.source();
    }

    /**
     * The fastest transient contact, mm/s: v = F_T / sqrt(mu k), mu = 1 / (1/m_H + 1/m_R), ISO/TS 15066:2016 Annex A;
     * 0 where no contact is permitted or nothing is known of the region.
     *
     * @param robotMassKg the effective mass of arm and load: half the moving mass, and the load
     */
    public double permittedMmS(BodyRegion region, double robotMassKg) {
        RegionValues bears = regions.get(region);
        if (bears == null || !bears.contactPermitted()) {
            return 0;
        }
        double mass = 1 / (1 / bears.massKg() + 1 / robotMassKg);
        double force = TRANSIENT * bears.quasiStaticN();
        return force / Math.sqrt(mass * bears.stiffnessNPerMm() * NEWTON_PER_METRE) * MM_PER_METRE;
    }
}
