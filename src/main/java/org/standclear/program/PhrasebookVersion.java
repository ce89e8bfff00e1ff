package org.standclear.program;

import java.time.Instant;
import org.standclear.core.program.phrases.Phrasebook;
import org.standclear.core.program.phrases.PhrasebookReader;
import org.standclear.platform.ids.CellId;
import org.standclear.platform.ids.PersonId;

/**
 * One version of a cell's phrasebook; never changed.
 *
 * @param number counted from 1 for each cell
 * @param name the one that the book gives itself
 * @param book its text (YAML)
 * @param reason why it was kept
 */
public record PhrasebookVersion(
        CellId cell,
        int number,
        String name,
        String book,
        String sha256,
        String reason,
        PersonId author,
        Instant keptAt) {

    /** Reads programs by this version; answers name it. */
    public PhrasebookReader reader() {
        return new PhrasebookReader(Phrasebook.read(book).value(), "phrasebook " + name + " v" + number);
    }
}
