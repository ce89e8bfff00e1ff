package org.standclear.cell;

import static org.assertj.core.api.Assertions.assertThat;

import org.junit.jupiter.api.Test;
import org.standclear.cell.CellFacts.Fact;
import org.standclear.core.cell.CellFileReader;

/** Whoever approves a version sees what of the arm it changes. */
class CellWordsTests {

    private static CellFacts facts(String file) {
        return CellWords.of(CellFileReader.read(file).value());
    }

    @Test
    void namesTheLengthOfBothLinks() {
        String file = SampleCell.file("Avocet", 7);

        assertThat(facts(file).facts())
                .filteredOn(fact -> fact.label().equals("Links"))
                .extracting(Fact::shown)
                .containsExactly("225 and 175 mm");
        assertThat(facts(file.replace("[225, 175]", "[175, 225]")).facts())
                .filteredOn(fact -> fact.label().equals("Links"))
                .extracting(Fact::shown)
                .containsExactly("175 and 225 mm");
    }

    @Test
    void saysThatTheHoldAndTheStopTimesAreOnlyTyped() {
        CellFacts facts = facts(SampleCell.file("Avocet", 7));

        assertThat(facts.facts())
                .filteredOn(fact -> fact.label().equals("Reduced power holds the tool at"))
                .extracting(Fact::source)
                .containsExactly("typed in the cell file; measure at the cell, at 100 % and at the override in use");
        assertThat(facts.facts())
                .filteredOn(fact -> fact.label().equals("Stop"))
                .extracting(Fact::source)
                .containsExactly("typed in the cell file; measure at the cell, at full load and reach");
    }
}
