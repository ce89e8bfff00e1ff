package org.standclear.report;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.List;
import org.junit.jupiter.api.Test;

/** The middle of an even number of values is the mean of the middle two (the textbook definition of the median). */
class MedianTests {

    private static double ofRuns(Integer... runs) {
        return new TermReport.Fairness(List.of(runs), 0, 0, 0, 0).median();
    }

    private static double ofSeconds(Long... seconds) {
        return new SignoffQuality(List.of(seconds), 0, 0, 0).medianSeconds();
    }

    @Test
    void isTheMiddleOfAnOddNumberAndTheMeanOfTwoElse() {
        assertThat(ofRuns()).isZero();
        assertThat(ofRuns(3)).isEqualTo(3);
        assertThat(ofRuns(0, 5)).isEqualTo(2.5);
        assertThat(ofRuns(0, 1, 9)).isEqualTo(1);
        assertThat(ofRuns(0, 1, 4, 9)).isEqualTo(2.5);

        assertThat(ofSeconds()).isZero();
        assertThat(ofSeconds(40L, 41L)).isEqualTo(40.5);
        assertThat(ofSeconds(40L, 90L, 400L)).isEqualTo(90);
    }
}
