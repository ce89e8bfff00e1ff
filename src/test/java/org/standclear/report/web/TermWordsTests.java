package org.standclear.report.web;

import static org.assertj.core.api.Assertions.assertThat;

import org.junit.jupiter.api.Test;
import org.standclear.core.statistics.CountComparison;
import org.standclear.core.statistics.EventCount;

/**
 * A change is said only where the exact conditional test shows one: of two terms with equal exposure, 8 and 2 events give
 * p = 2 * 56 / 1024 = 0.109, and 6 and 0 give p = 2 / 64 = 0.031 (binomial with one half, by hand).
 */
class TermWordsTests {

    private static String says(int now, int before) {
        return TermViews.says(new CountComparison(new EventCount(now), 100, new EventCount(before), 100));
    }

    @Test
    void saysAChangeOnlyWhereTheCountsShowOne() {
        assertThat(says(8, 2)).isEqualTo("no evidence of change");
        assertThat(says(6, 0)).isEqualTo("more per start than before");
        assertThat(says(0, 6)).isEqualTo("fewer per start than before");
        assertThat(says(0, 0)).isEqualTo("no evidence of change");
        assertThat(TermViews.says(null)).isEqualTo("one of the terms has no starts");
    }

    /** Six or fewer of twelve where six sevenths are expected in the first term: 0.003 (binomial, by an own sum). */
    @Test
    void looksAtStartsAndNotAtCountsAlone() {
        assertThat(TermViews.says(new CountComparison(new EventCount(6), 600, new EventCount(6), 100)))
                .isEqualTo("fewer per start than before");
    }
}
