package org.standclear.core.limits;

import static java.util.Objects.requireNonNull;
import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.EnumMap;
import java.util.Map;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.standclear.core.cell.BodyRegion;
import org.standclear.core.cell.RegionValues;

/** Every value of the shipped table, and what the formula makes of it. */
class ShippedContactTableTests {

    private static final ContactTable TABLE = ContactTableReader.shipped();

    /**
     * ISO/TS 15066:2016 Annex A as public texts quote it (S; back and shoulders from one text, the masses of the arm from
     * one of two that differ): force of a lasting contact in N, spring constant in N/mm, mass in kg.
     */
    @ParameterizedTest
    @CsvSource({
        "skull-and-forehead, 130, 150, 4.4, false",
        "face, 65, 75, 4.4, false",
        "neck, 150, 50, 1.2, true",
        "back-and-shoulders, 210, 35, 40, true",
        "chest, 140, 25, 40, true",
        "abdomen, 110, 10, 40, true",
        "pelvis, 180, 25, 40, true",
        "upper-arm-and-elbow, 150, 30, 3, true",
        "lower-arm-and-wrist, 160, 40, 2, true",
        "hand-and-fingers, 140, 75, 0.6, true",
        "thigh-and-knee, 220, 50, 75, true",
        "lower-leg, 130, 60, 75, true"
    })
    void holdsThePublishedValues(String region, double force, double stiffness, double mass, boolean contact) {
        RegionValues values = values(region);
        assertThat(values.quasiStaticN()).isEqualTo(force);
        assertThat(values.stiffnessNPerMm()).isEqualTo(stiffness);
        assertThat(values.massKg()).isEqualTo(mass);
        assertThat(values.contactPermitted()).isEqualTo(contact);
    }

    private static RegionValues values(String word) {
        return TABLE.regions().entrySet().stream()
                .filter(one -> one.getKey().word().equals(word))
                .map(Map.Entry::getValue)
                .findFirst()
                .orElseThrow();
    }

    @Test
    void holdsEveryRegion() {
        assertThat(TABLE.regions()).containsOnlyKeys(BodyRegion.values());
    }

    /** The worked example's mass (S): 0.6 kg against 8.9 kg is 0.562 kg; v = F / sqrt(mu k), so mu = (F / v)^2 / k. */
    @Test
    void agreesWithTheWorkedExamplesMass() {
        double speed = TABLE.permittedMmS(BodyRegion.HAND_AND_FINGERS, 8.9) / 1000;
        assertThat(Math.pow(280 / speed, 2) / 75_000).isCloseTo(0.562, within(5e-4));
    }

    /** A stiffer region is touched more slowly (S). */
    @Test
    void allowsLessWithMoreStiffness() {
        RegionValues hand = requireNonNull(TABLE.regions().get(BodyRegion.HAND_AND_FINGERS));
        Map<BodyRegion, RegionValues> stiffer = new EnumMap<>(BodyRegion.class);
        stiffer.put(
                BodyRegion.HAND_AND_FINGERS,
                new RegionValues(true, hand.quasiStaticN(), 2 * hand.stiffnessNPerMm(), hand.massKg(), "test"));
        assertThat(TABLE.before(stiffer).permittedMmS(BodyRegion.HAND_AND_FINGERS, 5))
                .isCloseTo(TABLE.permittedMmS(BodyRegion.HAND_AND_FINGERS, 5) / Math.sqrt(2), within(1e-9));
    }

    /** A common error to refuse (S): a transient contact has twice the force of a lasting one, not half of it. */
    @Test
    void doublesTheForceOfATransientContact() {
        double lasting = 140 / Math.sqrt(1 / (1 / 0.6 + 1 / 8.9) * 75_000);
        assertThat(lasting).isCloseTo(0.682, within(5e-4));
        assertThat(TABLE.permittedMmS(BodyRegion.HAND_AND_FINGERS, 8.9)).isCloseTo(2000 * lasting, within(1e-9));
    }
}
