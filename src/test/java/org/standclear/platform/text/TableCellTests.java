package org.standclear.platform.text;

import static org.assertj.core.api.Assertions.assertThat;

import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** The first signs are those that OWASP names under CSV injection; the full-width forms stand in Unicode's FF00 block. */
class TableCellTests {

    @ParameterizedTest
    @ValueSource(
            strings = {"=1+1", "+1", "-1", "@sum", "\tx", "\rx", "\nx", "\uFF1D1", "\uFF0B1", "\uFF0D1", "\uFF20x"})
    void putsAnApostropheBeforeWhatBeginsLikeAFormula(String text) {
        assertThat(TableCell.plain(text)).isEqualTo("'" + text);
    }

    @Test
    void leavesOtherTextAlone() {
        assertThat(TableCell.plain("Noor = operator")).isEqualTo("Noor = operator");
        assertThat(TableCell.plain("")).isEmpty();
        assertThat(TableCell.plain(null)).isEmpty();
    }
}
