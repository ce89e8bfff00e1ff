package org.standclear.report;

import static org.assertj.core.api.Assertions.assertThat;

import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** A threshold as people say it. */
class ExceptionRuleTests {

    @ParameterizedTest
    @CsvSource({
        "1, days, 1 day",
        "2, days, 2 days",
        "1, lapses, 1 lapse",
        "30, minutes, 30 minutes",
        "20, in one, one in 20"
    })
    void saysOneOfAThingAndSeveral(int threshold, String unit, String said) {
        assertThat(new ExceptionRule("code", "Title", "Reason.", threshold, unit, true).said())
                .isEqualTo(said);
    }
}
