package org.standclear.cell;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.time.Instant;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.standclear.platform.ids.CellId;
import org.standclear.platform.ids.PersonId;

class DayTestComparisonTests {

    private final CellVersion version =
            new CellVersion(CellId.next(), 7, "", "", "G-02", PersonId.next(), PersonId.next(), Instant.EPOCH, "first");
    private final CellFacts facts =
            new CellFacts("Avocet", 7, "G-02", List.of(0.0, 0.0, 80.0), "reduced", 50, List.of());

    @Test
    void readingsThatAgreePass() {
        assertThat(failures(read("reduced", 50, "G-02"))).isEmpty();
        assertThat(failures(read("reduced", 10, "g-02"))).isEmpty();
    }

    @ParameterizedTest
    @CsvSource({
        "reduced, 50.0001, G-02, Override reads 50.0001 %; the cell's limit is 50 %.",
        "full, 50, G-02, Power mode reads full; the cell's is reduced.",
        "reduced, 50, V-01, The fitted tool reads V-01; version 7 has G-02."
    })
    void aReadingThatDisagreesFailsAndSaysWhich(String power, double override, String tool, String says) {
        assertThat(failures(read(power, override, tool))).containsExactly(says);
    }

    @Test
    void everyActThatDidNotPassIsNamed() {
        var none = new DayTestReadings("by the door", false, true, false, "reduced", "3", 50, "G-02", false);

        assertThat(failures(none)).hasSize(4).first().asString().contains("by the door");
    }

    @Test
    void refusesOverridesThatNoDisplayShows() {
        assertThatThrownBy(() -> read("reduced", Double.NaN, "G-02")).isInstanceOf(IllegalArgumentException.class);
        assertThatThrownBy(() -> read("reduced", 0, "G-02")).isInstanceOf(IllegalArgumentException.class);
        assertThatThrownBy(() -> read("reduced", 100.1, "G-02")).isInstanceOf(IllegalArgumentException.class);
        assertThatThrownBy(() -> read("T", 50, "G-02")).isInstanceOf(IllegalArgumentException.class);
    }

    private List<String> failures(DayTestReadings read) {
        return DayTestComparison.failures(read, version, facts);
    }

    private static DayTestReadings read(String power, double override, String tool) {
        return new DayTestReadings("by the door", true, false, true, power, "3", override, tool, true);
    }
}
