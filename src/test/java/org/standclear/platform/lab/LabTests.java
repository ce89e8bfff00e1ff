package org.standclear.platform.lab;

import static org.assertj.core.api.Assertions.assertThat;

import java.time.ZoneOffset;
import org.junit.jupiter.api.Test;
import org.standclear.platform.ids.LabId;

class LabTests {

    private static Lab lab(String emergencyNumber, String firstAider, String stopMap) {
        return new Lab(
                LabId.next(), "College", "114", "Robot lab", ZoneOffset.UTC, emergencyNumber, firstAider, stopMap);
    }

    @Test
    void saysWhatNobodyHasSet() {
        assertThat(lab("555", "Hemi Coppergate", "one on each bench").unknown()).isEmpty();
        assertThat(lab("not set", " ", "not set").unknown())
                .containsExactly("emergency number", "first-aider", "e-stop map");
        assertThat(lab("555", "not set", "one on each bench").unknown()).containsExactly("first-aider");
    }
}
