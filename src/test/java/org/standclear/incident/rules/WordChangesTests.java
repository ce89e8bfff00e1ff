package org.standclear.incident.rules;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.Arrays;
import java.util.List;
import java.util.Random;
import java.util.stream.Collectors;
import java.util.stream.IntStream;
import org.junit.jupiter.api.Test;
import org.standclear.incident.rules.WordChanges.Fate;
import org.standclear.incident.rules.WordChanges.Piece;

/** Texts laid beside each other word by word. */
class WordChangesTests {

    @Test
    void namesWhatWentAndWhatCame() {
        assertThat(WordChanges.between("the bit met the plate", "the bit touched the plate twice"))
                .containsExactly(
                        new Piece(Fate.STAYED, "the bit"),
                        new Piece(Fate.REMOVED, "met"),
                        new Piece(Fate.ADDED, "touched"),
                        new Piece(Fate.STAYED, "the plate"),
                        new Piece(Fate.ADDED, "twice"));
    }

    @Test
    void takesSpacesAndLinesForNothing() {
        assertThat(WordChanges.between("one  two\nthree", " one two three "))
                .containsExactly(new Piece(Fate.STAYED, "one two three"));
        assertThat(WordChanges.between("", " ")).isEmpty();
        assertThat(WordChanges.between("", "new")).containsExactly(new Piece(Fate.ADDED, "new"));
        assertThat(WordChanges.between("old", "")).containsExactly(new Piece(Fate.REMOVED, "old"));
    }

    /** Whatever changed: what stayed and went is the old text, what stayed and came is the new one. Seed 20261127. */
    @Test
    void givesBothTextsBack() {
        Random random = new Random(20261127);
        for (int i = 0; i < 300; i++) {
            String before = text(random);
            String after = text(random);
            List<Piece> pieces = WordChanges.between(before, after);

            assertThat(without(pieces, Fate.ADDED)).isEqualTo(before);
            assertThat(without(pieces, Fate.REMOVED)).isEqualTo(after);
        }
    }

    private static String text(Random random) {
        return IntStream.range(0, random.nextInt(12))
                .mapToObj(i -> "abcd".substring(random.nextInt(4)).substring(0, 1))
                .collect(Collectors.joining(" "));
    }

    private static String without(List<Piece> pieces, Fate fate) {
        return pieces.stream()
                .filter(piece -> piece.fate() != fate)
                .flatMap(piece -> Arrays.stream(piece.words().split(" ")))
                .collect(Collectors.joining(" "));
    }
}
