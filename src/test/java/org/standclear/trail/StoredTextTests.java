package org.standclear.trail;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.Map;
import java.util.TreeMap;
import org.junit.jupiter.api.Test;

class StoredTextTests {

    @Test
    void keepsOrdinaryText() {
        assertThat(StoredText.clean("Bit met the plate, 3 × 2 mm 🤖", 100)).isEqualTo("Bit met the plate, 3 × 2 mm 🤖");
    }

    @Test
    void replacesWhatADatabaseCannotKeep() {
        assertThat(StoredText.clean("a\0b\uD83Dc", 100)).isEqualTo("a\uFFFDb\uFFFDc");
    }

    @Test
    void shortensBetweenCharacters() {
        assertThat(StoredText.clean("🤖🤖🤖", 3)).isEqualTo("🤖🤖🤖");
        assertThat(StoredText.clean("🤖🤖🤖🤖", 3)).isEqualTo("🤖🤖…");
    }

    @Test
    void writesFactsInTheOrderOfTheirNames() {
        assertThat(StoredText.facts(new TreeMap<>(Map.of("tool", "G-02", "cell", "Avocet \"A\""))))
                .isEqualTo("{\"cell\":\"Avocet \\\"A\\\"\",\"tool\":\"G-02\"}");
        assertThat(StoredText.facts(new TreeMap<>())).isEqualTo("{}");
        assertThat(StoredText.facts("{\"b\":\"2\",\"a\":\"1\"}"))
                .containsExactly(Map.entry("a", "1"), Map.entry("b", "2"));
    }
}
