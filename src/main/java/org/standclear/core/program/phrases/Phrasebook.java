package org.standclear.core.program.phrases;

import java.util.List;
import java.util.Optional;
import org.jspecify.annotations.Nullable;
import org.standclear.core.text.Reading;
import org.standclear.core.text.YamlReader;

/**
 * What the phrases of a language mean. Of several phrases that fit a line the first counts.
 *
 * @param sections how named sections begin and end; null when the language has none
 */
public record Phrasebook(
        String name, List<Phrase> phrases, @Nullable Sections sections) {

    public Phrasebook {
        phrases = List.copyOf(phrases);
    }

    /** The patterns of the line that begins a named section and of the line that ends it. */
    record Sections(PhrasePattern begin, PhrasePattern end) {}

    /** Reads a phrasebook (YAML, {@code phrasebook: 1}). */
    public static Reading<Phrasebook> read(String text) {
        return Reading.of(() -> PhrasebookFields.book(YamlReader.read(text)));
    }

    /** What each line of a text means, whatever comes of the text as a whole. */
    public Reading<List<LineMeaning>> meanings(String text) {
        return Reading.of(() -> new LineMatcher(this)
                .lines(text).stream()
                        .map(LineMeaning::of)
                        .flatMap(Optional::stream)
                        .toList());
    }
}
